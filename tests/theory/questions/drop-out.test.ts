import { describe, expect, test } from 'vitest';
import { asks } from '../../../shared-theory/questions/asks.ts';
import { judges, markAnswer } from '../../../shared-theory/questions/judges.ts';
import { markerOf } from '../../../shared-theory/diagnosis/marker.ts';
import { besideAll } from '../../../shared-theory/questions/beside.ts';
import { RELAXED } from './given-rhythm.ts';
import { context, EM_D, SETTINGS } from './given.ts';

const GROOVE = context(0, { tempo: 100, rhythm: RELAXED });

/** Twelve beats along with a groove at 100, then so many at another tempo. */
function through(then: number, silent = 9, first = 100) {
  const along = Array.from({ length: 13 }, (_, beat) => (beat * 60_000) / first);
  const last = along.at(-1) ?? 0;
  const taps = [...along, ...Array.from({ length: silent }, (_, beat) => last + ((beat + 1) * 60_000) / then)];
  return { taps: taps.map((tap) => Math.round(tap * 10) / 10), silentFrom: 13 };
}

test('the right answer is taps exactly on the beat, which a phone could have sent', () => {
  const right = judges['drop-out'].truth(GROOVE);
  expect(right?.silentFrom).toBeNull();
  expect(asks['drop-out'].read(right, SETTINGS)).toEqual(right);
  expect(right && markAnswer('drop-out', right, GROOVE)).toMatchObject({ credit: 1, exact: true });
  expect(judges['drop-out'].truth(context(0))).toBeNull();
  expect(() => judges['drop-out'].mark(through(100), context(0))).toThrow(RangeError);
});

describe('marks', () => {
  // All within 2 percent over eight beats (common practice), from there in a line to nothing at 10.
  test.each([
    [100, 1, []],
    [101.9, 1, []],
    [98.1, 1, []],
    [104, 0.75, ['rushes']],
    [96, 0.75, ['drags']],
    [106, 0.5, ['rushes']],
    [90, 0, ['drags']],
    [111, 0, ['rushes']],
  ])('who goes on at %d through the silence of a groove at 100 earns %d', (then, credit, errors) => {
    const mark = judges['drop-out'].mark(through(then), GROOVE);
    expect(mark).toMatchObject({ exact: credit === 1, errors });
    expect(Math.abs(mark.credit - credit)).toBeLessThanOrEqual(0.0101);
  });

  test('who keeps half or double time keeps the tempo', () => {
    expect(judges['drop-out'].mark(through(50, 5, 50), GROOVE).exact).toBe(true);
    expect(judges['drop-out'].mark(through(200, 18, 200), GROOVE).exact).toBe(true);
    expect(judges['drop-out'].mark(through(212, 18, 200), GROOVE)).toMatchObject({ errors: ['rushes'] });
  });

  test('who was never with the groove earns nothing, and is not said to have run away from it', () => {
    expect(judges['drop-out'].mark(through(125, 9, 125), GROOVE)).toEqual({ credit: 0, exact: false, errors: [] });
  });

  test('taps without a beat earn nothing and show nothing', () => {
    const taps = [0, 90, 1310, 1400, 1990, 3900, 4020, 4700, 6900, 7060];
    expect(judges['drop-out'].mark({ taps, silentFrom: 4 }, GROOVE)).toEqual({ credit: 0, exact: false, errors: [] });
  });

  test('hands of one tempo are marked each by its own taps', () => {
    const question = { id: 'drop-out-0', kind: 'drop-out', target: 0 } as const;
    const truth = { ...EM_D, rhythm: RELAXED };
    const marker = markerOf({
      question,
      questions: [question],
      truth,
      settings: SETTINGS,
      beside: besideAll(truth),
      letStand: new Set(),
      mayLeanOn: () => true,
    });
    // Behind at first, ahead in the silence: over all of it as fast as who holds.
    const [held, runs] = [through(100), through(106, 9, 96.5)];
    expect(asks['drop-out'].key(held)).toBe(asks['drop-out'].key(runs));
    expect([held, runs].map((answer) => marker(answer, () => null).exact)).toEqual([true, false]);
  });
});

test('who runs is told with others who run', () => {
  const [one, other] = [through(105), through(108)];
  const marks = [one, other].map((answer) => judges['drop-out'].mark(answer, GROOVE));
  expect(judges['drop-out'].heard(one, marks[0])).toBe('rushes');
  expect(judges['drop-out'].heard(other, marks[1])).toBe('rushes');
  expect(judges['drop-out'].heard(through(100))).toBe('100');
});
