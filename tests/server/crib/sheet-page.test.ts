import { beforeEach, describe, expect, test, vi } from 'vitest';
import { html } from '../../../server/crib/html.ts';
import { inShell } from '../../../server/crib/shell.ts';
import { roundPage, typedPage } from '../../../server/crib/sheet-page.ts';
import { DEFAULT_SETTINGS } from '../../../server/rooms/settings.ts';
import { roundCrib, typedCrib } from '../../../shared-theory/crib/typed.ts';
import { guitar } from '../../support/given.ts';

vi.mock(import('../../../shared-theory/crib/typed.ts'), async (original) => {
  const real = await original();
  return { ...real, typedCrib: vi.fn(real.typedCrib), roundCrib: vi.fn(real.roundCrib) };
});
beforeEach(() => {
  vi.clearAllMocks();
});

const page = (query: Readonly<Record<string, string>>, settings = DEFAULT_SETTINGS) =>
  typedPage('KOBAL', settings, query);

describe('the page of a typed vamp', () => {
  test('has a sheet with real signs and no script', () => {
    const { status, title, body } = page({ chords: 'F#m B' });
    expect({ status, title }).toEqual({ status: 200, title: 'Crib of F♯m B' });
    expect(body.markup).toContain('<article class="sheet"');
    expect(body.markup).not.toMatch(/<script|style=|on\w+=/);
    const text = body.markup.replace(/<[^>]*>/g, '');
    expect(text).not.toMatch(/[A-G]#/);
  });

  test('follows the class: its naming, capo and keys', () => {
    const german = page({ chords: 'H Fis' }, { ...DEFAULT_SETTINGS, naming: 'german', capo: 2, policy: 'relatives' });
    expect(german.title).toBe('Crib of H Fis');
    expect(german.body.markup).toContain('capo at fret 2');
    expect(german.body.markup).toContain('major keys and their relative minors');
  });

  test('says what it cannot read, and keeps what was typed', () => {
    const { status, body } = page({ chords: 'Em "><b>' });
    expect(status).toBe(400);
    expect(body.markup).toContain('role="alert"');
    expect(body.markup).not.toContain('"><b>');
    expect(body.markup).toContain('value="Em &#34;&#62;&#60;b&#62;"');
  });

  test.each([
    [{ chords: 'Em', policy: 'dorian' }, 'The policy “dorian” is not known. It is one of: majors,'],
    [{ chords: 'Em', capo: '12' }, 'The capo “12” is not known.'],
    [{ chords: 'Em', tuning: 'drop-x' }, 'The tuning “drop-x” is not known.'],
    [{ chords: 'C Dm Em F G Am Bdim C7 D7' }, 'eight different chords at most, not 9'],
    [
      { chords: Array.from({ length: 33 }, (_, index) => (index % 2 ? 'C' : 'G')).join(' ') },
      'at most, with those that come back, not 33',
    ],
  ])('%j: refused with what would be right', (query, sentence) => {
    const { status, body } = page(query);
    expect(status).toBe(400);
    expect(body.markup).toContain(sentence);
  });

  // A sheet of so many chords took a second to work out, and hung the room meanwhile.
  test('what goes on no sheet is refused at once, typed or played', () => {
    const roots = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
    const chords = roots.flatMap((root) => ['', 'm', '7', 'maj7', 'dim'].map((suffix) => root + suffix)).join(' ');
    expect(page({ chords: 'C F' }).status).toBe(200);
    expect(typedCrib).toHaveBeenCalledOnce();
    const { status, body } = page({ chords, capo: '2' });
    expect(status).toBe(400);
    expect(body.markup).toContain('not 60');
    // What was chosen beside the chords stays.
    expect(body.markup).toMatch(/value="2" selected|<option selected value="2"/);
    const played = roundPage('KOBAL', DEFAULT_SETTINGS, guitar(chords), {});
    expect(played.status).toBe(400);
    expect(typedCrib).toHaveBeenCalledOnce();
    expect(roundCrib).not.toHaveBeenCalled();
  });

  test('asks for chords where none are named', () => {
    const { status, body } = page({});
    expect(status).toBe(200);
    expect(body.markup).toContain('name="chords"');
    expect(body.markup).not.toContain('role="alert"');
  });
});

test('markup escapes texts, keeps markup, and fills the built page', () => {
  expect(html`<p>${'<b>&"'}${html`<i>${1}</i>`}${null}${['x', html`<u></u>`]}</p>`.markup).toBe(
    '<p>&#60;b&#62;&#38;&#34;<i>1</i>x<u></u></p>',
  );
  const shell = '<title>Hearsay crib</title><body><!--sheet--></body>';
  expect(inShell(shell, { title: 'A & B', body: html`<p>$&</p>` })).toBe(
    '<title>A &#38; B</title><body><p>$&</p></body>',
  );
});
