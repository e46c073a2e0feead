import { withBand } from '../../shared-theory/band.ts';
import { generate } from '../../shared-theory/generate.ts';
import { LEVELS_THAT_STAND } from '../../shared-theory/levels.ts';
import { perform } from '../../shared-theory/perform.ts';
import { STEEL, VOICES, type Instrument } from '../../shared-theory/sound/instrument.ts';
import { mixPerformance } from '../../shared-theory/sound/mix.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';
import { fiveRuns, middle, type Bench } from './row.ts';

const LEAST_TIMES_FASTER = 20;
const LEAST_VAMPS_A_SECOND = 2000;
const VAMPS = 2000;

/** A vamp from nothing to finished samples, against the time it plays. */
function rendering(
  name: string,
  instrument: Instrument,
  band: { readonly kit: boolean; readonly bass: boolean },
): Bench {
  return async () => {
    const vamp = voice({ slots: parseVamp('Em D', 4), groove: 'relaxed-alternate', tempo: 100, seed: 1 });
    const performed = withBand(vamp, perform(vamp, { loops: 2 }), band);
    const { times } = await fiveRuns(() => mixPerformance(performed, { sampleRate: 44_100, instrument }));
    const playing = performed.seconds * 1000;
    const { median, spread } = middle(times.map((time) => playing / time));
    return {
      name,
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
}

const ALONE = { kit: false, bass: false };

const renderings: readonly Bench[] = [
  ...VOICES.map((voice) => rendering(`rendering a vamp, ${voice}`, { ...STEEL, voice }, ALONE)),
  rendering('rendering a vamp with the band', { ...STEEL, smallSpeaker: true }, { kit: true, bass: true }),
];

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

export const soundBenches: readonly Bench[] = [...renderings, generatingVamps];
