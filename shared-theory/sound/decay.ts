import type { SoundedNote } from '../perform.ts';

type Touch = SoundedNote['touch'];

/** How a string dies: seconds to −60 dB of the fundamental, and of partials near `BRIGHT_HZ`. */
export type Decay = { readonly low: number; readonly high: number };

/** Where `Decay.high` is measured. */
const BRIGHT_HZ = 4000;

/** Open strings 1 to 6 of a steel-string guitar, common practice: bass strings ring about twice as long. */
const OPEN_SECONDS = [2.5, 2.7, 3, 3.4, 3.8, 4.2] as const;
const OPEN_BRIGHT_SECONDS = [0.7, 0.75, 0.8, 0.85, 0.9, 1] as const;

/** The palm lies on the bridge; thick strings move longer under it. Seconds to −60 dB. */
const PALM_SECONDS = [0.12, 0.125, 0.135, 0.15, 0.165, 0.18] as const;

/** The palm half on the strings. */
const HALF_SECONDS = [0.42, 0.45, 0.5, 0.55, 0.6, 0.65] as const;

const DEAD_SECONDS = 0.045;

/** Fretted notes ring shorter: this share of the open string's time is lost by the octave. */
const LOST_BY_THE_OCTAVE = 0.1;

/** Decay of a string, 1 (high E) to 6 (low E), under a touch; `fret` 0 to 24. */
export function decayOf(string: number, fret: number, touch: Touch): Decay {
  const index = string - 1;
  const open = OPEN_SECONDS[index];
  const bright = OPEN_BRIGHT_SECONDS[index];
  const palm = PALM_SECONDS[index];
  if (open === undefined || bright === undefined || palm === undefined) {
    throw new RangeError(`a guitar has the strings 1 to 6, not ${string}`);
  }
  switch (touch) {
    case 'open':
    case 'ring':
    case 'choke': {
      const left = 1 - (LOST_BY_THE_OCTAVE * Math.min(fret, 24)) / 12;
      return { low: open * left, high: bright * left };
    }
    case 'half':
      return { low: HALF_SECONDS[index] ?? palm, high: palm };
    case 'palm':
      return { low: palm, high: palm / 3 };
    case 'dead':
      return { low: DEAD_SECONDS, high: DEAD_SECONDS / 2 };
  }
}

/**
 * Coefficients of the symmetric three-point damping filter `side · x + middle · x′ + side · x″` for one trip round the loop.
 * Gains per period follow from the decay: g = 10^(−3 / (f · T60)) (Jaffe and Smith, "Extensions of the Karplus-Strong
 * plucked-string algorithm", 1983).
 */
export function dampingFilter(decay: Decay, frequency: number, sampleRate: number): { side: number; middle: number } {
  const perPeriod = (seconds: number) => 10 ** (-3 / (frequency * seconds));
  const gain = perPeriod(decay.low);
  const atBright = 1 - Math.cos((2 * Math.PI * BRIGHT_HZ) / sampleRate);
  // Past a quarter the filter would turn over and ring at the top of the spectrum.
  const share = Math.min(0.25, (1 - perPeriod(decay.high) / gain) / (2 * atBright));
  return { side: gain * share, middle: gain * (1 - 2 * share) };
}
