import type { Kind, Target } from './question.ts';

/** Seconds that a class usually needs for a question, least and most: a starting value that any room may prove wrong. */
const USUAL_SECONDS: Readonly<Record<Kind, readonly [number, number]>> = {
  tempo: [15, 30],
  steadiness: [15, 30],
  'drop-out': [20, 40],
  together: [20, 60],
  'bar-count': [12, 20],
  threes: [12, 20],
  'half-time': [12, 20],
  swing: [10, 20],
  drive: [10, 20],
  strokes: [20, 40],
  pendulum: [12, 20],
  'change-place': [12, 20],
  accents: [30, 60],
  'stroke-grid': [30, 60],
  roles: [30, 60],
  opened: [15, 30],
  count: [12, 20],
  order: [20, 40],
  direction: [12, 20],
  bass: [20, 40],
  quality: [10, 20],
  root: [20, 40],
  seventh: [10, 20],
  distance: [20, 40],
  numeral: [20, 30],
  'one-or-several': [10, 20],
  keys: [30, 45],
  settler: [20, 30],
  home: [12, 20],
};

/** Seconds that a class usually needs for a question, least and most. */
export function usualSeconds(kind: Kind): readonly [number, number] {
  return USUAL_SECONDS[kind];
}

/** What usually sounds while a question is answered. */
export type Meanwhile =
  | { readonly kind: 'full' }
  | { readonly kind: 'hold'; readonly slot: number }
  /** The first chord and the one of `slot`, by turns. */
  | { readonly kind: 'pair'; readonly slot: number }
  | { readonly kind: 'soft' }
  | { readonly kind: 'settler'; readonly index: number };

/** What usually sounds while a question is answered: the chord that is asked about, the two, or all of it, softly for the keys. */
export function meanwhileOf({ kind, target }: { readonly kind: Kind; readonly target: Target }): Meanwhile {
  switch (kind) {
    case 'bass':
    case 'quality':
    case 'root':
    case 'seventh':
      return { kind: 'hold', slot: target };
    case 'distance':
      return { kind: 'pair', slot: target };
    case 'numeral':
    case 'one-or-several':
    case 'keys':
      return { kind: 'soft' };
    case 'settler':
      return { kind: 'settler', index: target };
    case 'tempo':
    case 'steadiness':
    case 'drop-out':
    case 'together':
    case 'bar-count':
    case 'threes':
    case 'half-time':
    case 'swing':
    case 'drive':
    case 'strokes':
    case 'pendulum':
    case 'change-place':
    case 'accents':
    case 'stroke-grid':
    case 'roles':
    case 'opened':
    case 'count':
    case 'order':
    case 'direction':
    case 'home':
      return { kind: 'full' };
  }
}
