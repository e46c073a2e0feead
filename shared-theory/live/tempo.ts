import { grooveOf } from '../perform.ts';
import type { VoicedVamp } from '../vamps.ts';

/** The slowest that a live control goes, beats a minute. */
const SLOWEST_TEMPO = 30;
/** The fastest for chords without a groove. */
const FASTEST_TEMPO = 300;

/** The vamp at another tempo, kept between 30 and the fastest of its groove, where every quality can still be heard. */
export function withTempo(vamp: VoicedVamp, tempo: number): VoicedVamp {
  if (!Number.isFinite(tempo)) throw new RangeError(`A tempo is a number of beats a minute, not ${tempo}.`);
  const fastest = grooveOf(vamp)?.tempo[1] ?? FASTEST_TEMPO;
  return { ...vamp, tempo: Math.min(fastest, Math.max(SLOWEST_TEMPO, tempo)) };
}

/** How much faster each time round of a climb is. */
const CLIMB = 1.04;

/** The tempo of the next time round of a climb: about 4% faster, by one beat a minute at least, and never past `to`. */
export function climbed(tempo: number, to: number): number {
  return Math.min(to, Math.max(tempo + 1, Math.round(tempo * CLIMB)));
}
