import { STANDARD_TUNING } from '../neck.ts';
import { dampingFilter, decayOf } from './decay.ts';
import { loopDelay } from './fractional-delay.ts';
import { addRinging } from './string-loop.ts';
import type { VoiceSound } from './voices.ts';

/** The other string is set going this slowly: the knock of the pluck stays out of it. */
const ONSET_SECONDS = 0.12;

export type Sympathy = {
  /** MIDI notes of the open strings left free, and the hertz of each by `frequency`. */
  readonly free: readonly number[];
  readonly frequency: (midi: number) => number;
  readonly sound: VoiceSound;
  readonly sampleRate: number;
};

/**
 * Adds to `samples`, the motion of a struck string, that of the open strings that nobody damps. Each is a string of its own,
 * pushed by the struck one through the bridge and by nothing else, so only partials that the two have in common grow, over
 * some tenths of a second: an octave or unison clearly, a fifth or fourth at every second or third partial, other intervals
 * hardly. Not modelled: what the free strings give back to the struck one, and their ringing on after it is stopped.
 */
export function addSympathy(samples: Float64Array, { free, frequency, sound, sampleRate }: Sympathy): void {
  const drive = samples.slice();
  const onset = Math.min(drive.length, Math.round(ONSET_SECONDS * sampleRate));
  for (let n = 0; n < onset; n++) {
    drive[n] = (drive[n] ?? 0) * (0.5 - 0.5 * Math.cos((Math.PI * n) / onset));
  }
  for (const midi of free) {
    const hertz = frequency(midi);
    const decay = decayOf(sound, nearestString(midi), 0, 'open');
    const loop = { ...loopDelay(hertz, sampleRate), ...dampingFilter(decay, hertz, sampleRate) };
    addRinging(samples, drive, sound.coupling / hertz, loop);
  }
}

/** The string, 1 to 6, that is tuned nearest to a note: a capo or another tuning moves each a little. */
function nearestString(midi: number): number {
  const away = STANDARD_TUNING.map((open) => Math.abs(open - midi));
  return 6 - away.indexOf(Math.min(...away));
}
