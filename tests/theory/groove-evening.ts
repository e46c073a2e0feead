import { beatLevelOf } from '../../shared-theory/beat-levels.ts';
import { generate } from '../../shared-theory/generate.ts';
import { GRIDS } from '../../shared-theory/groove-grid.ts';
import type { Grid } from '../../shared-theory/groove-grid.ts';
import { andSlots, numberSlots, pendulumAt } from '../../shared-theory/questions/grid-places.ts';
import { judgeOf } from '../../shared-theory/questions/judges.ts';
import { besideAll } from '../../shared-theory/questions/beside.ts';
import type { Answer, Kind, MarkingContext, QuestionSettings } from '../../shared-theory/questions/question.ts';
import type { GridStroke, Role, Weight } from '../../shared-theory/rhythm/rhythm-truth.ts';

const SETTINGS: QuestionSettings = { policy: 'majors', qualities: ['major', 'minor'] };

/** What is known of each of so many vamps of a beat level, over the chords of a level. */
export function grooveEvening(beat: number, level: number, vamps: number): readonly MarkingContext[] {
  return Array.from({ length: vamps }, (_, seed) => {
    const { truth } = generate({ level, seed, beat });
    return { truth, target: 0, settings: SETTINGS, beside: besideAll(truth), own: {} };
  });
}

/** Kinds that a beat level asks and that have more than one lazy answer; taps have tests of their own. */
export function kindsOfBeatLevel(beat: number): readonly Kind[] {
  return beatLevelOf(beat).kinds.filter((kind) => kind !== 'tempo' && kind !== 'steadiness');
}

/** How often an answer is right, what it earns on average, and of how many it was given. */
export type Earned = { readonly right: number; readonly credit: number; readonly of: number };

/** What somebody earns who answers without hearing: by the size of the grid alone, which the pad tells. */
export function earned(evening: readonly MarkingContext[], kind: Kind, answer: (grid: Grid) => Answer | null): Earned {
  const judge = judgeOf<Kind>(kind);
  const marks = evening.flatMap((context) => {
    const given = judge.truth(context) === null ? null : answer(context.truth.rhythm?.grid ?? 'E8');
    return given === null ? [] : [judge.mark(given, context)];
  });
  return {
    right: marks.filter(({ exact }) => exact).length / Math.max(1, marks.length),
    credit: marks.reduce((sum, { credit }) => sum + credit, 0) / Math.max(1, marks.length),
    of: marks.length,
  };
}

type Fill<T> = (grid: Grid) => readonly T[];

function fill<T>(each: (slot: number, grid: Grid) => T): Fill<T> {
  return (grid) => Array.from({ length: GRIDS[grid].slots }, (_, slot) => each(slot, grid));
}

const isNumber = (slot: number, grid: Grid, odd?: 0 | 1) => {
  const place = numberSlots(grid).indexOf(slot);
  return place >= 0 && (odd === undefined || place % 2 === odd);
};

/** Answers on the grid of those who hear nothing. */
export const LAZY: {
  readonly accents: Readonly<Record<string, Fill<Weight>>>;
  readonly 'stroke-grid': Readonly<Record<string, Fill<GridStroke>>>;
  readonly roles: Readonly<Record<string, Fill<Role>>>;
  readonly opened: Readonly<Record<string, Fill<number>>>;
} = {
  accents: {
    'all silent': fill(() => 0),
    'all light': fill(() => 1),
    'all heavy': fill(() => 2),
    'one and three': fill((slot, grid) => (isNumber(slot, grid, 0) ? 2 : 1)),
    'two and four': fill((slot, grid) => (isNumber(slot, grid, 1) ? 2 : 1)),
    numbers: fill((slot, grid) => (isNumber(slot, grid) ? 2 : 1)),
    'numbers alone': fill((slot, grid) => (isNumber(slot, grid) ? 2 : 0)),
    ands: fill((slot, grid) => (andSlots(grid).includes(slot) ? 2 : 1)),
    'the first': fill((slot) => (slot === 0 ? 2 : 1)),
  },
  'stroke-grid': {
    'down and up': fill((slot, grid) => pendulumAt(grid, slot)),
    'up and down': fill((slot, grid) => (pendulumAt(grid, slot) === 'down' ? 'up' : 'down')),
    downs: fill(() => 'down'),
    'downs on the numbers': fill((slot, grid) => (isNumber(slot, grid) ? 'down' : 'silent')),
    nothing: fill(() => 'silent'),
  },
  roles: {
    'foot and closed hat': fill((slot, grid) => (isNumber(slot, grid) ? 'kick' : 'closed')),
    'foot and open hat': fill((slot, grid) => (isNumber(slot, grid) ? 'kick' : 'open')),
    'foot, slap and hat': fill((slot, grid) =>
      isNumber(slot, grid, 1) ? 'slap' : isNumber(slot, grid) ? 'kick' : 'closed',
    ),
    'all feet': fill(() => 'kick'),
    'all closed': fill(() => 'closed'),
  },
  opened: {
    ands: (grid) => andSlots(grid),
    numbers: (grid) => numberSlots(grid),
    last: (grid) => [GRIDS[grid].slots - 1],
    'last number': (grid) => numberSlots(grid).slice(-1),
    'the first': () => [0],
    'one and three': (grid) => numberSlots(grid).filter((_, place) => place % 2 === 0),
    all: fill((slot) => slot),
  },
};
