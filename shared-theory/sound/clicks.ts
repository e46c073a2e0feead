import { STEEL, type Instrument } from './instrument.ts';
import { matchingGain } from './mix.ts';
import { renderString } from './plucked-string.ts';

export { countInVoice } from './count-voice.ts';
export { countInTick } from './tick.ts';

/**
 * The note that proves that sound runs: A, an octave under the class's pitch, as loud as a vamp, so that it also sets level and tuning. Two
 * seconds.
 */
export function testNote(sampleRate: number, instrument: Instrument = STEEL): Float32Array {
  const samples = renderString(
    { midi: 57, string: 3, fret: 2, touch: 'open', accent: 3, stroke: 'down' },
    { seconds: 2, sampleRate, seed: 57, instrument },
  );
  const gain = matchingGain(samples, sampleRate);
  return samples.map((sample) => sample * gain);
}
