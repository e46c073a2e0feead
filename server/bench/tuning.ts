import { STANDARD_TUNING } from '../../shared-theory/neck.ts';
import { midiFrequency } from '../../shared-theory/pitch.ts';
import { STEEL, VOICES, type Voice } from '../../shared-theory/sound/instrument.ts';
import { renderString } from '../../shared-theory/sound/plucked-string.ts';
import type { Bench } from './row.ts';

const MOST_CENTS = 1;

const SAMPLE_RATES = [44_100, 48_000] as const;
const HIGHEST_MIDI = 88;

/** The worst note of the neck, E2 to E6 on every string, at both rates. */
function tuning(voice: Voice): Bench {
  return () => {
    const cents = SAMPLE_RATES.flatMap((sampleRate) =>
      STANDARD_TUNING.flatMap((open, index) =>
        Array.from({ length: 25 }, (_, fret) => open + fret)
          .filter((midi) => midi <= HIGHEST_MIDI)
          .map((midi) => centsOff({ string: 6 - index, fret: midi - open, midi }, voice, sampleRate)),
      ),
    );
    const worst = Math.max(...cents.map(Math.abs));
    return {
      name: `string tuning, worst, ${voice}`,
      value: worst,
      unit: 'cents',
      baseline: null,
      against: null,
      ratio: null,
      budget: `within ${MOST_CENTS} cent`,
      within: worst <= MOST_CENTS,
      spread: [Math.min(...cents), Math.max(...cents)],
    };
  };
}

type Place = { readonly string: number; readonly fret: number; readonly midi: number };

/** Cents by which a rendered note's fundamental turns too fast, from its phase in two windows 0.4 s apart. */
function centsOff(place: Place, voice: Voice, sampleRate: number): number {
  const note = { ...place, touch: 'open', accent: 3, stroke: 'down' } as const;
  const instrument = { ...STEEL, voice };
  const samples = renderString(note, { seconds: 0.9, sampleRate, seed: 1, instrument });
  const frequency = midiFrequency(place.midi);
  const hop = Math.round(0.4 * sampleRate);
  const from = Math.round(0.1 * sampleRate);
  const turned = phase(samples, sampleRate, frequency, from + hop) - phase(samples, sampleRate, frequency, from);
  const nearest = turned - 2 * Math.PI * Math.round(turned / (2 * Math.PI));
  return 1200 * Math.log2(1 + (nearest * sampleRate) / (2 * Math.PI * hop * frequency));
}

function phase(samples: Float32Array, sampleRate: number, frequency: number, from: number): number {
  const length = Math.round(0.3 * sampleRate);
  let real = 0;
  let imaginary = 0;
  for (let n = 0; n < length; n++) {
    const windowed = (samples[from + n] ?? 0) * (0.5 - 0.5 * Math.cos((2 * Math.PI * n) / length));
    const angle = (2 * Math.PI * frequency * (from + n)) / sampleRate;
    real += windowed * Math.cos(angle);
    imaginary -= windowed * Math.sin(angle);
  }
  return Math.atan2(imaginary, real);
}

export const tuningBenches: readonly Bench[] = VOICES.map(tuning);
