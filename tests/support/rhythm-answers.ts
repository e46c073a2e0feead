import type { Answers, Kind } from '../../shared-theory/questions/question.ts';

/** Ten taps at 120 beats a minute. */
export const TAPS = Array.from({ length: 10 }, (_, index) => index * 500);

/** Taps at a tempo, as even as can be. */
export function tapsAt(tempo: number, count = 12): readonly number[] {
  return Array.from({ length: count }, (_, index) => Math.round((index * 600_000) / tempo) / 10);
}

/** An answer to each question about the groove but its strokes; on the beat grid one of eight slots. */
export const RHYTHM_ANSWERS = {
  tempo: TAPS,
  steadiness: TAPS,
  'drop-out': { taps: TAPS, silentFrom: 4 },
  together: TAPS,
  'bar-count': 4,
  threes: 'two-threes',
  'half-time': 'half-time',
  swing: 'swung',
  drive: 'driving',
  pendulum: 'breaks',
  'change-place': 'pushed',
  accents: [2, 1, 2, 1, 2, 1, 2, 1],
  'stroke-grid': ['down', 'up', 'down', 'up', 'down', 'up', 'down', 'up'],
  roles: ['kick', 'closed', 'slap', 'closed', 'kick', 'closed', 'slap', 'closed'],
  opened: [1, 5],
} as const satisfies Partial<{ readonly [K in Kind]: Answers[K] }>;
