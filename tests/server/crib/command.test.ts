import { spawnSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import type { GuitarCrib } from '../../../shared-theory/crib/typed.ts';

/** Runs the command as `npm run crib` does. */
function crib(...args: readonly string[]) {
  const run = spawnSync(process.execPath, ['--import', 'tsx', 'server/crib/command.ts', ...args], { encoding: 'utf8' });
  return { status: run.status, out: run.stdout, error: run.stderr };
}
const json = (...args: readonly string[]) => {
  const { status, out, error } = crib(...args, '--json');
  expect({ status, error, lines: out.split('\n').length }).toEqual({ status: 0, error: '', lines: 2 });
  return JSON.parse(out) as unknown;
};

describe('crib --json', () => {
  test('Em D: G (vi–V) and D (ii–I), deciders C and C sharp', () => {
    expect(json('Em D')).toMatchObject({
      chords: ['Em', 'D'],
      policy: 'majors',
      keys: [
        { key: 'G major', numerals: ['vi', 'V'] },
        { key: 'D major', numerals: ['ii', 'I'] },
      ],
      deciders: [
        { note: 'C', leaves: ['G major'] },
        { note: 'C#', leaves: ['D major'] },
      ],
    });
  });

  test('C D: only G; C Am: three keys; Am E: none', () => {
    expect(json('C D')).toMatchObject({
      keys: [{ key: 'G major', numerals: ['IV', 'V'] }],
      deciders: [],
      settlers: [],
    });
    expect(json('C Am')).toMatchObject({ keys: [{ key: 'F major' }, { key: 'C major' }, { key: 'G major' }] });
    expect(json('Am E')).toMatchObject({ keys: [], deciders: [], settlers: [], clash: ['C', 'G#'] });
  });

  test('fixed fields, and more: shapes, safe notes, sung notes, questions with what to say', () => {
    expect(json('F Dm', '--capo', '3')).toMatchObject({
      settlers: expect.arrayContaining([{ chord: 'Cm', leaves: ['Bb major'] }]),
      melodyNotes: expect.arrayContaining([{ note: 'Eb', leaves: ['Bb major'] }]),
      safeNotes: ['F', 'G', 'A', 'C', 'D'],
      guitar: { tuning: 'standard', capo: 3 },
      shapes: [
        { chord: 'F', shape: 'D', frets: [null, null, 0, 2, 3, 2], refusal: null },
        { chord: 'Dm', shape: 'Bm', frets: [null, 2, 4, 4, 3, 2], refusal: null },
      ],
      questions: expect.arrayContaining([
        expect.objectContaining({
          question: 'root-0',
          answer: 'F',
          wrong: expect.arrayContaining([
            expect.objectContaining({ answer: 'C', error: 'hears-the-fifth', say: expect.any(String) }),
          ]),
        }),
      ]),
    });
  });

  test('with a groove: every lawful count of its beat and of its bar, and what will be heard instead', () => {
    const asked = (...args: readonly string[]) => {
      const { questions } = json('C Am', '--groove', ...args) as GuitarCrib;
      return ['tempo', 'bar-count'].map((kind) => questions.find((question) => question.kind === kind));
    };
    // Chops on the ands are counted on 2 and 4 of a beat twice as fast as well: common practice.
    const [tempo, bars] = asked('offbeat-skank', '--tempo', '84');
    expect(tempo).toMatchObject({ answer: 84, also: [168] });
    expect(tempo?.wrong.map(({ answer, error }) => [answer, error])).toEqual([
      [42, 'taps-half-as-fast'],
      [126, 'taps-three-against-two'],
    ]);
    expect(bars?.also).toBeUndefined();
    const [usual, twos] = asked('relaxed-alternate');
    expect([usual?.answer, usual?.also]).toEqual([66, undefined]);
    expect(twos).toMatchObject({ answer: 4, also: [2] });
  });

  test('with relatives, with bars of three beats', () => {
    expect(json('C D', '--policy', 'relatives')).toMatchObject({ keys: [{ key: 'G major' }, { key: 'E minor' }] });
    expect(json('| G . D |', '--beats', '3')).toMatchObject({ chords: ['G', 'D'] });
  });
});

describe('crib', () => {
  test('a sheet with real signs', () => {
    const { status, out, error } = crib('Em D');
    expect({ status, error }).toEqual({ status: 0, error: '' });
    expect(out).toContain('[Em]');
    expect(out).toMatch(/D major {2,}C♯ {2,}A, F♯m/);
    expect(out).not.toContain('#');
  });

  test('counted 84, also 168', () => {
    expect(crib('C Am', '--groove', 'offbeat-skank', '--tempo', '84').out).toContain(
      'tempo: about 84 a minute; also about 168 a minute\n',
    );
  });

  test.each([
    [
      ['Em D', '--tempo', '90'],
      'A tempo is asked of a groove: give --groove as well. All grooves: npm run render -- --grooves\n',
    ],
    [['Em D', '--groove', 'waltz', '--tempo', '20'], 'waltz goes from 84 to 180 beats a minute, not 20.\n'],
    [[], 'Give the chords of one vamp in quotes: npm run crib -- "Em D"\n'],
    [['Em', 'D'], 'Give the chords of one vamp in quotes: npm run crib -- "Em D"\n'],
    [['Em H'], 'Could not read the chords at “H”: H is called B here, and B flat is Bb. Write B.\n'],
    [
      ['Em D', '--policy', 'dorian', '--json'],
      'The option --policy is one of majors, relatives, raised-seventh, modes, not “dorian”.\n',
    ],
  ])('%j: a sentence on standard error, status 2', (args, error) => {
    expect(crib(...args)).toEqual({ status: 2, out: '', error });
  });
});

describe('crib --naming', () => {
  test('german: H and B are read and printed so, on the console alone', () => {
    const { status, out } = crib('H Cis', '--naming', 'german');
    expect(status).toBe(0);
    expect(out).toMatch(/^H {2}Cis {3}\(/);
    expect(out).toMatch(/Safe to solo on: .*\bAis\b/);
    expect(json('H Cis', '--naming', 'german')).toMatchObject({ chords: ['B', 'C#'] });
    expect(json('B F', '--naming', 'german')).toMatchObject({ chords: ['Bb', 'F'] });
  });

  test('fixed do reads syllables; a letter is refused with the syllable that would be right', () => {
    expect(json('Lam Sol', '--naming', 'fixed-do')).toMatchObject({ chords: ['Am', 'G'] });
    const { status, error } = crib('Am G', '--naming', 'fixed-do');
    expect(status).not.toBe(0);
    expect(error).toContain('La');
  });

  test('a naming that there is not is refused with those that there are', () => {
    const { status, error } = crib('Em D', '--naming', 'klingon');
    expect(status).not.toBe(0);
    expect(error).toMatch(/naming.*english.*german.*mixed.*dutch.*fixed-do/s);
  });
});
