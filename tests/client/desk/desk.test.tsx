import { signal } from '@preact/signals';
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { expect, test } from 'vitest';
import { chosenStep, nextReady, type Desk, type Leaf } from '../../../client/desk/desk-state.ts';
import { DeskPage } from '../../../client/desk/screens/desk-page.tsx';
import { rightHands, shareRight } from '../../../client/desk/screens/script.tsx';
import { refusalSentence } from '../../../client/desk/sentences.ts';
import type { DeskView, WireSpread, WireTruth } from '../../../server/protocol/views.ts';
import { roundAt, spreadOf, stepsAt } from '../host/fixtures.ts';

const root = document.createElement('div');
document.body.append(root);

const TRUTHS = {
  'strokes-0': 'down-up',
  'direction-1': 'up',
  'root-0': { string: 6, fret: 0 },
  'keys-0': ['2M', '7M'],
};

function deskView(
  at: number,
  status: 'ready' | 'open' | 'closed' | 'shown',
  fallen?: { readonly spread: WireSpread; readonly truth: WireTruth; readonly topWrong?: DeskView['topWrong'] },
): DeskView {
  const { seats: _, ...round } = roundAt(at, status);
  return {
    ...round,
    students: [
      {
        student: 's1',
        seat: 1,
        name: 'Oda',
        here: true,
        pair: false,
        leftHanded: true,
        wrote: false,
        cannotHear: true,
      },
    ],
    spread: fallen?.spread ?? null,
    truth: fallen?.truth ?? null,
    topWrong: fallen?.topWrong ?? null,
    crib: {
      chords: ['Em', 'D'],
      keys: [{ key: 'G major', numerals: ['vi', 'V'] }],
      deciders: [{ note: 'C#', leaves: ['D major'] }],
      settlers: [{ chord: 'F#m', leaves: ['D major'] }],
      bass: ['E', 'D'],
      directions: ['up'],
    },
    truths: TRUTHS,
    spreadShown: false,
    visitors: 1,
    grooves: [{ id: 'waltz', name: 'Waltz', meter: '3/4', tempo: [84, 180] }],
    levels: [
      { level: 2, name: 'Up or down' },
      { level: 3, name: 'Major or minor' },
    ],
  };
}

function draw(view: DeskView, leaf: Leaf = 'round', choosing = false) {
  const wishes: unknown[] = [];
  const picked: string[] = [];
  const step = view.current ?? view.steps.find((each) => each.status === 'ready') ?? null;
  const desk: Desk = {
    view: signal(view),
    status: signal({ kind: 'live' as const }),
    leaf: signal(leaf),
    step: signal(step),
    choosing: signal(choosing),
    notice: signal(''),
    busy: signal(false),
    turnTo: () => undefined,
    pick: (question) => void picked.push(question),
    skip: (question) => void picked.push(`skip ${question}`),
    skipped: signal(new Set<string>()),
    choose: () => void wishes.push('choose'),
    wish: (wish) => (wishes.push(wish), Promise.resolve({ ok: true })),
    change: (change) => (wishes.push(change), Promise.resolve({ ok: true })),
  };
  void act(() => render(<DeskPage desk={desk} />, root));
  return { wishes, picked };
}

const button = (name: string): HTMLButtonElement => {
  const found = Array.from(root.querySelectorAll('button')).find((each) => each.textContent?.trim() === name);
  if (!found) throw new Error(`no button ${name}`);
  return found;
};
const actions = (): readonly string[] =>
  Array.from(root.querySelectorAll('.desk-actions button'), (each) => each.textContent ?? '');
const primary = (): string | undefined => root.querySelector('.desk-actions .primary')?.textContent ?? undefined;

const FALLEN = {
  spread: spreadOf('direction', 1, { up: 6, down: 4 }, { notSure: 2, silent: 1 }),
  truth: { answer: 'up', key: 'up' },
};

test('the next question is the next in the row that has not been opened, then from its beginning', () => {
  const steps = stepsAt(2, 'shown');
  expect(nextReady(steps, 'quality-0')?.question).toBe('root-0');
  expect(nextReady(steps, 'keys-0')?.question).toBe('root-0');
  expect(nextReady(stepsAt(6, 'shown'), 'keys-0')).toBeNull();
  expect(nextReady(steps, 'quality-0', new Set(['root-0']))?.question).toBe('quality-1');
});

test('a pick holds until another question is opened or another round begins', () => {
  const view = deskView(1, 'ready');
  const pick = { question: 'keys-0', round: 'r1', over: null };
  expect(chosenStep(view, pick, new Set())?.question).toBe('keys-0');
  const next = { ...view, vamp: view.vamp && { ...view.vamp, round: 'r2' } };
  expect(chosenStep(next, pick, new Set())?.question).toBe('direction-1');
  expect(chosenStep(deskView(1, 'open'), pick, new Set())?.question).toBe('direction-1');
  expect(chosenStep(view, null, new Set(['direction-1']))?.question).toBe('quality-0');
});

test('a question that waits can be opened or skipped; the commands name their target', () => {
  const { wishes, picked } = draw(deskView(1, 'ready'));
  expect(actions()).toEqual(['stop', 'new vamp', 'skip', 'open']);
  expect(primary()).toBe('open');
  button('open').click();
  expect(wishes).toEqual([{ type: 'OpenQuestion', round: 'r1', question: 'direction-1' }]);
  button('skip').click();
  expect(picked).toEqual(['skip direction-1']);
});

test('an open question shows the right answer to the teacher, hands in, and who cannot hear', () => {
  const { wishes } = draw(deskView(1, 'open'));
  expect(root.textContent).toContain('right: up');
  expect(root.textContent).toContain('17 of 24');
  expect(root.textContent).toContain('one silent, one can’t hear');
  expect(primary()).toBe('close');
  button('close').click();
  expect(wishes).toEqual([{ type: 'CloseQuestion', ask: deskView(1, 'open').current?.ask }]);
});

test('after the close the spread, the right ones, and the likeliest next press', () => {
  draw(deskView(1, 'closed', FALLEN));
  expect(root.querySelector('h1')?.textContent).toBe('Six of 12 heard it.');
  expect(root.querySelector('svg.spread')?.getAttribute('aria-label')).toBe('up: 6, down: 4');
  expect(root.textContent).toContain('two not sure'.replace('two', '2'));
  expect(primary()).toBe('neighbour');

  const few = { ...FALLEN, spread: spreadOf('direction', 1, { up: 1, down: 9 }, { notSure: 0 }) };
  draw(deskView(1, 'closed', few));
  expect(primary()).toBeUndefined();
  expect(root.textContent).toContain('Few heard it');

  const most = { ...FALLEN, spread: spreadOf('direction', 1, { up: 9, down: 1 }, { notSure: 0 }) };
  draw(deskView(1, 'closed', most));
  expect(primary()).toBe('show');
});

test('what was misheard most stands with a sentence to say and a thing to play', () => {
  const topWrong = {
    key: 'down',
    answer: 'down',
    count: 4,
    error: 'follows-the-top-note',
    manyTheSame: true,
    suspectSpeaker: false,
  };
  draw(deskView(1, 'closed', { ...FALLEN, topWrong }));
  expect(root.textContent).toContain('Four heard down.');
  expect(root.querySelector('.say')?.textContent).toMatch(/^“.+”$/);
  expect(root.textContent).toContain('Many the same');
});

test('other right places count as right, and no hand is no share', () => {
  const spread = spreadOf('root', 0, { '6.0': 2, '5.7': 3, '5.2': 5 }, { notSure: 0 });
  const truth = { answer: { string: 6, fret: 0 }, key: '6.0', also: ['5.7', '6.12'] };
  const view = deskView(3, 'closed', { spread, truth });
  expect(rightHands(view)).toBe(5);
  expect(shareRight(view)).toBe(0.5);
  expect(shareRight(deskView(3, 'closed', { spread: spreadOf('root', 0, {}, { notSure: 0 }), truth }))).toBeNull();
});

test('sound controls name the chords and change on the next bar line', () => {
  const { wishes } = draw(deskView(1, 'open'));
  button('hold D').click();
  button('slower').click();
  expect(wishes).toEqual([
    { kind: 'hold', slot: 1 },
    { kind: 'tempo', tempo: 92 },
  ]);
});

test('the crib prints real signs and the roll says who is asleep or cannot hear', () => {
  draw(deskView(1, 'open'), 'crib');
  expect(root.textContent).toContain('C♯ leaves D major');
  draw(deskView(1, 'open'), 'roll');
  expect(root.textContent).toContain('here · can’t hear: nearer the speaker · left-handed');
});

test('typed chords begin a round on the teacher’s own guitar; a bass move is told only where it was changed', () => {
  const { wishes } = draw(deskView(1, 'ready'), 'round', true);
  const chords = root.querySelector<HTMLInputElement>('input[name=chords]');
  if (!chords) throw new Error('no field for chords');
  void act(() => {
    chords.value = '| G . D . |';
    chords.dispatchEvent(new Event('input', { bubbles: true }));
  });
  const form = chords.form;
  void act(() => void form?.dispatchEvent(new Event('submit', { bubbles: true, cancelable: true })));
  const move = root.querySelector<HTMLButtonElement>('.bass-move');
  void act(() => move?.click());
  void act(() => void form?.dispatchEvent(new Event('submit', { bubbles: true, cancelable: true })));
  const common = { type: 'StartGuitarRound', after: 3, chords: '| G . D . |', groove: null, tempo: null };
  const after = deskView(1, 'ready').vamp?.number;
  expect(wishes).toMatchObject([
    { ...common, after, directions: null },
    { ...common, after, directions: ['up'] },
  ]);
});

test('chords are shown as typed, whatever is typed: only the server reads them', () => {
  draw(deskView(1, 'ready'), 'round', true);
  const chords = root.querySelector<HTMLInputElement>('input[name=chords]');
  for (const text of ['Em h', 'e m', 'Em H7#', '| | x', 'Em D']) {
    void act(() => {
      if (chords) chords.value = text;
      chords?.dispatchEvent(new Event('input', { bubbles: true }));
    });
    expect(button('ask about my guitar').disabled).toBe(false);
  }
  expect(root.querySelector('.bass-move')?.textContent).toBe('D as usual');
});

test.each([
  ['4/4', [8, 8], 3],
  ['4/4', [2, 2], 0],
  ['3/4', [6, 6], 3],
  ['4/4', [4, 4, 4, 4], 3],
] as const)('in %s, chords of %j beats have %i bar lines between the repeat signs', (meter, beats, lines) => {
  const view = deskView(1, 'ready');
  const slots = beats.map((each) => ({ chord: 'G', beats: each, frets: [] }));
  draw({ ...view, vamp: view.vamp && { ...view.vamp, meter, slots } });
  // Each repeat sign draws one thin line beside its thick bar.
  expect(root.querySelectorAll('.chord-slashes path.g3').length - 2).toBe(lines);
});

test('after the lesson the teacher can go on with another vamp', () => {
  const { wishes } = draw({ ...deskView(1, 'ready'), status: 'lesson-ended', breakdown: [] });
  button('go on with another vamp').click();
  expect(wishes).toEqual(['choose']);
});

test('a refusal is a sentence with what was wrong; silence is told as such', () => {
  const detail = { found: 'G7', suggestion: 'Write G.' };
  expect(refusalSentence({ ok: false, reason: 'chords-not-readable', detail })).toBe(
    'Could not read the chords at “G7”: Write G.',
  );
  expect(refusalSentence(null)).toContain('Not confirmed');
});
