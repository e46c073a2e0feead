import { addFiltered, bandPass, filtered, highPass, lowPass } from './second-order.ts';
import type { VoiceSound } from './voices.ts';

/** The slowest mode has rung out after this. */
const TAIL_SECONDS = 0.12;

/** Steepness of the corner at the bottom (Butterworth). */
const FLAT_Q = Math.SQRT1_2;

/** What a small speaker gets of a note: `bass` carries the chord's bass, `other` makes room for it. */
export type SpeakerShare = 'bass' | 'other' | null;

/** Second to fourth harmonics of the basses E2 to A2 lie about here, where any speaker plays. */
const HARMONICS = { hertz: 290, q: 0.9, gain: 2.2 } as const;

/** Other notes lose their lows under this. */
const THIN_HZ = 250;

/**
 * The instrument round a string: its modes beside the direct sound, what it lets out, and what a small speaker is given.
 * String and instrument are linear, so the pluck goes through the instrument before the string instead of after it: the
 * same sound, at a fraction of the work (Smith, "Efficient synthesis of stringed musical instruments", 1993). The result
 * is longer than the pluck by the ringing of the instrument.
 */
export function throughInstrument(
  pluck: Float64Array,
  { modes, reach }: VoiceSound,
  share: SpeakerShare,
  sampleRate: number,
): Float64Array {
  const input = new Float64Array(pluck.length + Math.round(TAIL_SECONDS * sampleRate));
  input.set(pluck);
  let out: Float64Array = input.slice();
  for (const { hertz, q, gain } of modes) addFiltered(out, input, bandPass(hertz, q, sampleRate), gain);
  out = filtered(filtered(out, lowPass(reach.to, reach.q, sampleRate)), highPass(reach.from, FLAT_Q, sampleRate));
  if (share === 'bass')
    addFiltered(out, out.slice(), bandPass(HARMONICS.hertz, HARMONICS.q, sampleRate), HARMONICS.gain);
  if (share === 'other') out = filtered(out, highPass(THIN_HZ, FLAT_Q, sampleRate));
  return out;
}
