import { generate } from '../../shared-theory/generate.ts';
import { LEVELS_THAT_STAND } from '../../shared-theory/levels.ts';
import { STANDARD_TUNING } from '../../shared-theory/neck.ts';
import { perform } from '../../shared-theory/perform.ts';
import { midiFrequency } from '../../shared-theory/pitch.ts';
import { mixPerformance } from '../../shared-theory/sound/mix.ts';
import { renderString } from '../../shared-theory/sound/plucked-string.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';
import { fiveRuns, middle, type Bench } from './row.ts';

const LEAST_TIMES_FASTER = 20;
const LEAST_VAMPS_A_SECOND = 2000;
const MOST_CENTS = 1;

const SAMPLE_RATES = [44_100, 48_000] as const;
const HIGHEST_MIDI = 88;
const VAMPS = 2000;

/** A vamp from nothing to finished samples, against the time it plays. */
const renderingVamp: Bench = async () => {
  const vamp = voice({ slots: parseVamp('Em D', 4), groove: 'relaxed-alternate', tempo: 100, seed: 1 });
  const performed = perform(vamp, { loops: 2 });
  const { times } = await fiveRuns(() => mixPerformance(performed, { sampleRate: 44_100 }));
  const playing = performed.seconds * 1000;
  const { median, spread } = middle(times.map((time) => playing / time));
  return {
    name: 'rendering a vamp',
    value: middle(times).median,
    unit: 'ms',
    baseline: playing,
    against: 'the time it plays',
    ratio: median,
    budget: `at least ${LEAST_TIMES_FASTER} times faster than it plays`,
    within: median >= LEAST_TIMES_FASTER,
    spread,
  };
};

/** Vamps of every level with their truth. No run repeats a seed: what was worked out for a loop before would flatter it. */
const generatingVamps: Bench = async () => {
  const levels = LEVELS_THAT_STAND;
  let seed = 0;
  const run = () => {
    const end = seed + VAMPS;
    for (; seed < end; seed++) generate({ level: levels[seed % levels.length] ?? 1, seed });
  };
  const { times } = await fiveRuns(run);
  const { median, spread } = middle(times.map((time) => (VAMPS * 1000) / time));
  return {
    name: 'vamps generated with truth',
    value: median,
    unit: 'a second',
    baseline: null,
    against: null,
    ratio: null,
    budget: `at least ${LEAST_VAMPS_A_SECOND} a second`,
    within: median >= LEAST_VAMPS_A_SECOND,
    spread,
  };
};

/** The worst note of the neck, E2 to E6 on every string, at both rates. */
const tuning: Bench = () => {
  const cents = SAMPLE_RATES.flatMap((sampleRate) =>
    STANDARD_TUNING.flatMap((open, index) =>
      Array.from({ length: 25 }, (_, fret) => open + fret)
        .filter((midi) => midi <= HIGHEST_MIDI)
        .map((midi) => centsOff(6 - index, midi - open, midi, sampleRate)),
    ),
  );
  const worst = Math.max(...cents.map(Math.abs));
  return {
    name: 'string tuning, worst note',
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

/** Cents by which a rendered note's fundamental turns too fast, from its phase in two windows 0.4 s apart. */
function centsOff(string: number, fret: number, midi: number, sampleRate: number): number {
  const note = { midi, string, fret, touch: 'open', accent: 3, stroke: 'down' } as const;
  const samples = renderString(note, { seconds: 0.9, sampleRate, seed: 1 });
  const frequency = midiFrequency(midi);
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

export const soundBenches: readonly Bench[] = [renderingVamp, tuning, generatingVamps];
