import type { SoundedNote } from '../perform.ts';
import { seededRandom } from '../random.ts';
import type { PluckSound } from './voices.ts';

/** What sets the string going. */
export type Pluck = {
  readonly frequency: number;
  readonly sampleRate: number;
  readonly fret: number;
  readonly touch: SoundedNote['touch'];
  readonly accent: SoundedNote['accent'];
  readonly seed: number;
  readonly sound: PluckSound;
  /** Share of the open string at which a pickup listens, null without one. */
  readonly pickup: number | null;
  /** Factor of the pluck's corner: above one for a clearer attack. */
  readonly brightness: number;
};

const TOUCH_BRIGHTNESS = { open: 1, ring: 1, half: 0.5, choke: 1, palm: 0.22, dead: 0.5 } as const;

/** The string's own unevenness as it slips off, beside its motion. */
const NOISE = { open: 0.05, ring: 0.05, half: 0.05, choke: 0.05, palm: 0.05, dead: 0.9 } as const;
const NOISE_SECONDS = 0.006;
const DEAD_NOISE_SECONDS = 0.025;

/** Periods after which the push of a pluck has leaked away. */
const PERIODS = 12;

/** Nearer to the middle of a string every other partial would be missing. */
const FURTHEST_SHARE = 0.45;

/**
 * The excitation of a plucked string: a string pulled aside at one point lets go as a rectangle travelling round the loop,
 * whose partials fall as sin(πkp)/k with the pick at p. The hand stays where it is while a fret shortens the string. A pickup
 * hears the partials as sin(πkq) more or less, at q. Built of whole samples, so nothing of it lies above half the rate.
 */
export function pluck(struck: Pluck): Float64Array {
  const { frequency, sampleRate, fret, touch, accent, seed, sound, pickup, brightness } = struck;
  const period = sampleRate / frequency;
  const noiseSamples = Math.round((touch === 'dead' ? DEAD_NOISE_SECONDS : NOISE_SECONDS) * sampleRate);
  const raw = new Float64Array(Math.ceil(PERIODS * period) + noiseSamples);
  const chance = seededRandom(seed, 'pick noise');
  for (let n = 0; n < noiseSamples; n++) raw[n] = NOISE[touch] * (1 - n / noiseSamples) ** 2 * (2 * chance() - 1);
  raw[0] = (raw[0] ?? 0) + 1;
  const shorter = 2 ** (fret / 12);
  let push = lessDelayed(raw, Math.min(FURTHEST_SHARE, sound.position * shorter) * period);
  // Past the middle the string is its own mirror.
  if (pickup !== null) push = lessDelayed(push, ((pickup * shorter) % 1) * period);

  const leak = Math.exp((-2 * Math.PI * frequency * sound.leak) / sampleRate);
  const corner = Math.min(sound.corner[accent] * TOUCH_BRIGHTNESS[touch] * brightness, sampleRate * 0.4);
  const edge = (sampleRate / (2 * Math.PI * sound.edge[accent])) * TOUCH_BRIGHTNESS[touch];
  const soft = 1 - Math.exp((-2 * Math.PI * corner) / sampleRate);
  let integral = 0;
  let first = 0;
  let second = 0;
  for (let n = 0; n < push.length; n++) {
    const now = push[n] ?? 0;
    integral = leak * integral + now;
    first += soft * (integral + edge * now - first);
    second += soft * (first - second);
    push[n] = second;
  }
  return push;
}

/** A pick or a coil is not a point: the partials that it should miss are weak, not gone. */
const LEFT_OUT = 0.92;

/** The samples less nearly all of themselves `delay` samples later. */
function lessDelayed(samples: Float64Array, delay: number): Float64Array {
  const whole = Math.floor(delay);
  const part = delay - whole;
  return samples.map(
    (now, n) => now - LEFT_OUT * ((1 - part) * (samples[n - whole] ?? 0) + part * (samples[n - whole - 1] ?? 0)),
  );
}
