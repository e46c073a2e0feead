import { describe, expect, test } from 'vitest';
import { heardSentence } from '../../../client/host/heard-sentence.ts';
import { legend, revealSentence } from '../../../client/host/sentences.ts';
import { spreadLabel } from '../../../client/host/screens/spread.tsx';
import type { WireSpread, WireTaps, WireTruth } from '../../../server/protocol/views.ts';
import { questionInstruction, questionPrompt } from '../../../server/protocol/words/questions.ts';
import { GRID_KINDS, RHYTHM_KINDS, TAPPED_KINDS } from '../../../shared-theory/questions/question.ts';
import { roundAt } from './fixtures.ts';

const TAPS: WireTaps = {
  read: 5,
  of: 6,
  tempo: 101,
  between: [99, 120],
  tempi: [50, 99, 101, 103.9, 104.1],
  unevenness: [1, 3.9, 4.1, 6, 11],
  spread: 22.4,
  drift: { percent: 2.34, error: 0.5 },
  curve: [{ beat: 9, middle: -6.3, low: -20, high: 1 }],
};

const spreadWith = (kind: string, rest: Partial<WireSpread> = {}): WireSpread => ({
  ask: 'a1',
  kind,
  target: 0,
  asking: { kind, target: 0 },
  counts: [],
  notSure: 1,
  silent: 0,
  of: 7,
  ...rest,
});

const tapped = (kind: string, taps = TAPS): WireSpread =>
  spreadWith(kind, { counts: [{ key: '101', answer: [0, 600], count: 6 }], taps });

const HUNDRED: WireTruth = { answer: [0, 600], key: '100' };

describe('how the room heard the groove', () => {
  test('a tempo within four hundredths of a lawful one is heard', () => {
    expect(heardSentence(tapped('tempo'), HUNDRED)).toBe('3 of 7 heard it.');
    expect(heardSentence(tapped('tempo'), { ...HUNDRED, also: ['50'] })).toBe('4 of 7 heard it.');
  });

  test('even taps are counted up to four hundredths', () => {
    expect(heardSentence(tapped('steadiness'), HUNDRED)).toBe('2 of 7 tapped evenly.');
  });

  test.each([
    [{ percent: 2.34, error: 0.5 }, 'In the silence the room went 2.3 % faster.'],
    [{ percent: -3, error: 0.5 }, 'In the silence the room went 3 % slower.'],
    [{ percent: 0.9, error: 0.5 }, 'In the silence the room held the tempo.'],
    [null, 'Too few taps came through the silence to tell.'],
  ])('of a silence, the room’s drift and no hand’s', (drift, sentence) => {
    expect(heardSentence(tapped('drop-out', { ...TAPS, drift }), HUNDRED)).toBe(sentence);
  });

  test('of a grid, on how many slots most of the room is right; of bars that differ each is', () => {
    const counts = [
      { key: 'D-DU', answer: null, count: 3 },
      { key: 'DUDD', answer: null, count: 2 },
      { key: 'UUDD', answer: null, count: 2 },
    ];
    const truth = { answer: null, key: 'D-DU' };
    const spread = spreadWith('stroke-grid', { counts });
    expect(heardSentence(spread, truth)).toBe('Most of the room is right on 2 of 4 slots.');
    expect(heardSentence(spread, { ...truth, also: ['D-DD'] })).toBe('Most of the room is right on 3 of 4 slots.');
    expect(heardSentence(spreadWith('roles'), truth)).toBeNull();
  });

  test('of a choice, how many made it', () => {
    const counts = [
      { key: 'swung', answer: 'swung', count: 4 },
      { key: 'straight', answer: 'straight', count: 2 },
    ];
    expect(heardSentence(spreadWith('swing', { counts }), { answer: 'swung', key: 'swung' })).toBe('4 of 7 heard it.');
  });
});

test.each([
  ['tempo', 'one bead, one hand: 6 tapped, 1 not sure'],
  ['drop-out', 'the middle of 6 hands; half of them lie in the hatching'],
  ['together', '6 hands as one: nobody stands out'],
  ['accents', 'as high as the class’s mean: 6 marked it, 1 not sure'],
  ['roles', 'hands on each sign: 6 marked it, 1 not sure'],
  ['opened', 'one bead, one hand on a slot: 6 marked it, 1 not sure'],
  ['pendulum', 'one stroke, one hand: 6 marked it, 1 not sure'],
])('%s: what stands for a hand', (kind, sentence) => {
  expect(legend(tapped(kind))).toBe(sentence);
});

test('hands that tapped are counted where no answer travels by itself; where bars differ, two frames are explained', () => {
  expect(legend(spreadWith('tempo', { taps: TAPS }))).toBe('one bead, one hand: 6 tapped, 1 not sure');
  expect(legend(spreadWith('tempo', { taps: { ...TAPS, of: 0 }, notSure: 0 }))).toBe('No hand is in.');
  // Without a curve there is no hatching to speak of.
  expect(legend(tapped('drop-out', { ...TAPS, curve: null }))).toBe('6 tapped, 1 not sure');
  const between = { answer: null, key: '2111', also: ['2121'] };
  expect(legend(tapped('accents'), between)).toBe('between light and heavy both are right');
  const strokes = tapped('stroke-grid');
  const truth = { answer: null, key: 'DDDD' };
  expect(legend(strokes, truth)).toBe('hands on each sign: 6 marked it, 1 not sure');
  expect(legend(strokes, { ...truth, also: ['D-DD'] })).toBe(
    'two frames on a slot: the bars differ, and both are right',
  );
});

const viewOf = (kind: string, grid?: string) => {
  const view = roundAt(0, 'shown');
  if (!view.current) throw new Error('a question is asked');
  const asking = { kind, target: 0, ...(grid === undefined ? {} : { grid }) };
  return { ...view, current: { ...view.current, kind, asking } };
};

test.each(['tempo', 'steadiness', 'drop-out', 'together'])(
  '%s: those who cannot see it hear of the room, and not of hand after hand',
  (kind) => {
    const label = spreadLabel({ ...viewOf(kind), spread: tapped(kind) }, null);
    expect(label).toContain(questionPrompt({ kind, target: 0 }));
    expect(label).not.toContain(': 6');
    expect(label).toMatch(
      {
        tempo: /about 101/,
        steadiness: /4 percent/,
        'drop-out': /6 percent of a beat behind/,
        together: /within 22 ms/,
      }[kind] ?? /^$/,
    );
  },
);

test('every kind about the groove says its question, its instruction and its right answer on the wall', () => {
  const answers: Readonly<Record<string, WireTruth>> = {
    'bar-count': { answer: 3, key: '3', also: ['6'] },
    threes: { answer: 'two-threes', key: 'two-threes' },
    'half-time': { answer: 'half-time', key: 'half-time' },
    swing: { answer: 'swung', key: 'swung' },
    drive: { answer: 'driving', key: 'driving' },
    strokes: { answer: 'down-up', key: 'down-up' },
    pendulum: { answer: 'breaks', key: 'breaks' },
    'change-place': { answer: 'pushed', key: 'pushed' },
    accents: { answer: [2, 1, 2, 1, 2, 1, 2, 1], key: '21212121' },
    'stroke-grid': { answer: ['down', 'up', 'down', 'up', 'down', 'up', 'down', 'up'], key: 'DUDUDUDU' },
    roles: { answer: ['kick', 'closed', 'slap', 'closed', 'kick', 'closed', 'slap', 'open'], key: 'kcsckcso' },
    opened: { answer: [7], key: '7' },
  };
  for (const kind of RHYTHM_KINDS) {
    const view = viewOf(kind, GRID_KINDS.has(kind) ? 'E8' : undefined);
    expect(questionPrompt(view.current.asking)).not.toBe('');
    expect(questionInstruction(view.current.asking)).not.toBe('');
    const truth = answers[kind] ?? (TAPPED_KINDS.has(kind) ? HUNDRED : null);
    if (!truth) throw new Error(`no answer of ${kind}`);
    if (kind !== 'together') expect(revealSentence(view, truth), kind).toMatch(/^[A-Z].*\.$/);
  }
});
