import type { SoundedNote } from '../perform.ts';
import { seededRandom } from '../random.ts';

/** What the pick does to the string. */
export type Pluck = {
  readonly frequency: number;
  readonly sampleRate: number;
  readonly touch: SoundedNote['touch'];
  readonly accent: SoundedNote['accent'];
  readonly stroke: SoundedNote['stroke'];
  readonly seed: number;
};

/** Corner of the pick's own low-pass for heavy, medium and light strokes: a hard stroke is bright. */
const BRIGHTNESS_HZ = {
  down: { 3: 5600, 2: 3900, 1: 2700 },
  // The pick's edge meets plain strings near the bridge: thin and bright even where it is light.
  up: { 3: 7300, 2: 6300, 1: 5500 },
} as const;
const TOUCH_BRIGHTNESS = { open: 1, ring: 1, half: 0.5, choke: 1, palm: 0.22, dead: 0.5 } as const;

/** Above this a hard pick adds its own edge to the string's motion; a light one slips off later. */
const EDGE_HZ = { 3: 2600, 2: 3400, 1: 4600 } as const;

/** Where the pick meets the string, as a share of its length from the bridge; an upstroke catches it nearer the bridge. */
const PICK_POSITION = { down: 0.17, up: 0.11 } as const;

/** Pick noise beside the string's own motion. */
const NOISE = { open: 0.05, ring: 0.05, half: 0.05, choke: 0.05, palm: 0.05, dead: 0.9 } as const;
const NOISE_SECONDS = 0.006;
const DEAD_NOISE_SECONDS = 0.025;

/**
 * The excitation of a plucked string: a string pulled aside at one point lets go as a rectangle travelling round the loop,
 * whose partials fall as sin(πkp)/k with the pick at p. Its sum is zero, so the string carries no direct current.
 */
export function pluck({ frequency, sampleRate, touch, accent, stroke, seed }: Pluck): Float64Array {
  const period = sampleRate / frequency;
  const noiseSamples = Math.round((touch === 'dead' ? DEAD_NOISE_SECONDS : NOISE_SECONDS) * sampleRate);
  const out = new Float64Array(Math.ceil(12 * period) + noiseSamples);
  const share = PICK_POSITION[stroke] * period;
  const whole = Math.floor(share);
  const part = share - whole;

  const chance = seededRandom(seed, 'pick noise');
  const next = () => 2 * chance() - 1;
  const force = (n: number, noise: number) => (n === 0 ? 1 : 0) + noise;
  // The upstroke's leak is faster: less of the lowest partials, a thinner sound.
  const leak = Math.exp((-2 * Math.PI * frequency * (stroke === 'up' ? 1.2 : 0.4)) / sampleRate);
  const corner = Math.min(BRIGHTNESS_HZ[stroke][accent] * TOUCH_BRIGHTNESS[touch], sampleRate * 0.4);
  const edge = (sampleRate / (2 * Math.PI * EDGE_HZ[accent])) * TOUCH_BRIGHTNESS[touch];
  const soft = 1 - Math.exp((-2 * Math.PI * corner) / sampleRate);

  const raw = new Float64Array(out.length);
  for (let n = 0; n < out.length; n++) {
    const fading = n < noiseSamples ? NOISE[touch] * (1 - n / noiseSamples) ** 2 : 0;
    raw[n] = force(n, fading === 0 ? 0 : fading * next());
  }
  let integral = 0;
  let first = 0;
  let second = 0;
  for (let n = 0; n < out.length; n++) {
    const back = n - whole;
    const reflected = (1 - part) * (raw[back] ?? 0) + part * (raw[back - 1] ?? 0);
    const push = (raw[n] ?? 0) - reflected;
    integral = leak * integral + push;
    first += soft * (integral + edge * push - first);
    second += soft * (first - second);
    out[n] = second;
  }
  return out;
}
