import { describe, expect, test } from 'vitest';
import type { Answer, Kind } from '../../shared-theory/questions/question.ts';
import { expectAtMost } from './asked-vamps.ts';
import { earned, grooveEvening, kindsOfBeatLevel, LAZY } from './groove-evening.ts';

const VAMPS = 160;

/** Both answers of each pair, and the counts of a bar. */
const CONSTANTS: Partial<Record<Kind, readonly Answer[]>> = {
  'bar-count': [2, 3, 4, 6, 7],
  threes: ['two-threes', 'three-twos'],
  'half-time': ['full-time', 'half-time'],
  swing: ['straight', 'swung'],
  drive: ['driving', 'relaxed'],
  strokes: ['all-downs', 'down-up'],
  pendulum: ['keeps', 'breaks'],
  'change-place': ['on-one', 'pushed'],
};

/**
 * The most that one answer may be right of the questions that it is given to: half of a pair, a third of the counts of a bar, a quarter
 * of the grids; what comes together by chance alone is rarer still.
 */
const MOST: Readonly<Record<number, Partial<Record<Kind, number>>>> = {
  2: { 'bar-count': 1 / 3 },
  3: { accents: 1 / 4 },
  4: { roles: 1 / 4, opened: 1 / 4 },
  5: { drive: 1 / 2, strokes: 1 / 2, pendulum: 1 / 2, 'stroke-grid': 1 / 4 },
  6: { threes: 1 / 2, 'half-time': 1 / 2, swing: 1 / 2 },
  7: { 'change-place': 1 / 2, accents: 0.15 },
  8: { accents: 0.05, 'stroke-grid': 1 / 4 },
};

describe.each([2, 3, 4, 5, 6, 7, 8])('beat level %d', (beat) => {
  // Chords of two levels: what is heard of a groove hangs on the chords as well.
  const evening = [3, 6].flatMap((level) => grooveEvening(beat, level, VAMPS / 2));

  test.each(kindsOfBeatLevel(beat).filter((kind) => kind in CONSTANTS))('one answer to %s always', (kind) => {
    for (const answer of CONSTANTS[kind] ?? []) {
      const { right, of } = earned(evening, kind, () => answer);
      expect(of).toBeGreaterThan(VAMPS / 10);
      expectAtMost(`${kind} ${JSON.stringify(answer)}`, { rate: right, count: of }, MOST[beat]?.[kind] ?? 0);
    }
  });

  test.each(kindsOfBeatLevel(beat).filter((kind) => kind in LAZY))('one filling of the grid for %s always', (kind) => {
    const fillings = Object.entries(LAZY[kind as keyof typeof LAZY]);
    for (const [name, answer] of fillings) {
      const { right, of } = earned(evening, kind, answer as never);
      expect(of).toBeGreaterThan(VAMPS / 10);
      expectAtMost(`${kind}: ${name}`, { rate: right, count: of }, MOST[beat]?.[kind] ?? 0);
    }
  });

  test.runIf(kindsOfBeatLevel(beat).includes('roles'))('a kit by rote earns nothing but where it is right', () => {
    for (const name of ['foot and closed hat', 'foot and open hat', 'foot, slap and hat'] as const) {
      const { right, credit } = earned(evening, 'roles', LAZY.roles[name] as never);
      expect(right).toBeGreaterThan(0);
      expect(credit).toBeCloseTo(right, 12);
    }
  });

  test.runIf(kindsOfBeatLevel(beat).includes('opened'))('slots by rote earn nothing but where they are right', () => {
    for (const name of ['all', 'numbers', 'ands'] as const) {
      const { right, credit } = earned(evening, 'opened', LAZY.opened[name] as never);
      expect(credit).toBeCloseTo(right, 12);
    }
  });

  test.runIf(kindsOfBeatLevel(beat).includes('accents'))('all alike earns nothing of the accents, in no round', () => {
    for (const name of ['all silent', 'all light', 'all heavy'] as const) {
      expect(earned(evening, 'accents', LAZY.accents[name] as never)).toMatchObject({ right: 0, credit: 0 });
    }
  });

  test.runIf(kindsOfBeatLevel(beat).includes('stroke-grid'))(
    'strokes by rote earn nothing but where they are right',
    () => {
      for (const [name, answer] of Object.entries(LAZY['stroke-grid'])) {
        const { right, credit } = earned(evening, 'stroke-grid', answer);
        expect([name, credit]).toEqual([name, expect.closeTo(right, 12)]);
      }
    },
  );
});
