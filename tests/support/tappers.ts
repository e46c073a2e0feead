import { seededRandom } from '../../shared-theory/random.ts';
import type { Random } from '../../shared-theory/random.ts';

/** A hand that taps along; times in milliseconds. */
export type Tapper = {
  /** Beats a minute that it taps, at the middle beat. */
  readonly tempo: number;
  /** Beats that it taps along with, missed ones among them. Default 10. */
  readonly beats?: number;
  /** Standard deviation of each tap around its beat, independent of the others: the motor. Default 30. */
  readonly jitter?: number;
  /** Standard deviation of each beat's own length, which adds up from beat to beat: the inner clock. Default 0. */
  readonly clock?: number;
  /** Share of its distance from the beat that the clock takes back at each beat while it hears one. Default 0. */
  readonly correction?: number;
  /** Percent by which it is faster after eight beats. Default 0. */
  readonly drift?: number;
  /** Indices of beats without a tap. */
  readonly missed?: readonly number[];
  /** Indices of beats whose tap bounces, and milliseconds until the second one. */
  readonly doubled?: readonly (readonly [index: number, after: number])[];
  /** Milliseconds by which the taps of the first beats are late, one for each. */
  readonly startUp?: readonly number[];
  /** After which beat the hand pauses, and for how long beside the beat itself. */
  readonly pauses?: readonly (readonly [index: number, lasts: number])[];
};

/** A normal deviate, mean 0, standard deviation 1 (Box and Muller 1958). */
function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Times of the taps, rising, the first one at 0. Equal seeds tap alike. */
export function tapAlong(tapper: Tapper, seed: number): readonly number[] {
  const { tempo, beats = 10, jitter = 30, clock = 0, correction = 0, drift = 0 } = tapper;
  const random = seededRandom(seed, 'taps');
  const period = 60_000 / tempo;
  const times: number[] = [];
  let due = 0;
  let astray = 0;
  for (let beat = 0; beat < beats; beat += 1) {
    const late = tapper.startUp?.[beat] ?? 0;
    const time = due + astray + jitter * normal(random) + late;
    if (!tapper.missed?.includes(beat)) times.push(time);
    for (const [index, after] of tapper.doubled ?? []) if (index === beat) times.push(time + after);
    // The tempo changes by the same share from beat to beat, and is the named one halfway.
    due += period / (1 + (drift / 100) * ((beat - (beats - 2) / 2) / 8));
    astray = astray * (1 - correction) + clock * normal(random);
    for (const [index, lasts] of tapper.pauses ?? []) if (index === beat) due += lasts;
  }
  const sorted = times.toSorted((one, other) => one - other);
  return sorted.map((time) => time - (sorted[0] ?? 0));
}

/** A few hundred seeds, or as many as are named. */
export function seeds(count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => index);
}
