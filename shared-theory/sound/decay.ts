import type { Touch } from '../perform.ts';
import type { VoiceSound } from './voices.ts';

/** How a string dies: seconds to −60 dB of the fundamental, and of partials near `BRIGHT_HZ`. */
export type Decay = { readonly low: number; readonly high: number };

/** Where `Decay.high` is measured. */
const BRIGHT_HZ = 4000;

/** The palm lies on the bridge; thick strings move longer under it. Seconds to −60 dB, strings 1 to 6. */
const PALM_SECONDS = [0.12, 0.125, 0.135, 0.15, 0.165, 0.18] as const;

/** The palm touches the strings with its edge only: pitch and bass stay, the shine is gone. */
const HALF_SECONDS = [0.42, 0.45, 0.49, 0.54, 0.59, 0.64] as const;
const HALF_BRIGHT_SHARE = 0.3;

const DEAD_SECONDS = 0.045;

/** Decay of a string, 1 (high E) to 6 (low E), under a touch; `fret` 0 to 24. */
export function decayOf(sound: VoiceSound, string: number, fret: number, touch: Touch): Decay {
  const index = string - 1;
  const open = sound.ring[index];
  const bright = sound.brightRing[index];
  const palm = PALM_SECONDS[index];
  const half = HALF_SECONDS[index];
  if (open === undefined || bright === undefined || palm === undefined || half === undefined) {
    throw new RangeError(`a guitar has the strings 1 to 6, not ${string}`);
  }
  switch (touch) {
    case 'open':
    case 'ring':
    case 'choke': {
      const left = 1 - (sound.lostByOctave * Math.min(fret, 24)) / 12;
      return { low: open * left, high: bright * left };
    }
    case 'half':
      return { low: half, high: Math.min(half * HALF_BRIGHT_SHARE, bright) };
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
  const atBright = 1 - Math.cos((2 * Math.PI * BRIGHT_HZ) / sampleRate);
  const atFundamental = 1 - Math.cos((2 * Math.PI * frequency) / sampleRate);
  const gain = perPeriod(decay.low);
  // Past a quarter the filter would turn over and ring at the top of the spectrum.
  const share = Math.min(0.25, (1 - perPeriod(decay.high) / gain) / (2 * atBright));
  // The filter takes a little of the fundamental too; a note near BRIGHT_HZ / 3 would else die well before its time.
  const whole = Math.min(gain / (1 - 2 * share * atFundamental), 0.99999);
  return { side: whole * share, middle: whole * (1 - 2 * share) };
}
