import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { withBand } from '../../shared-theory/band.ts';
import { generate } from '../../shared-theory/generate.ts';
import { barsOf, countIn } from '../../shared-theory/live.ts';
import { perform } from '../../shared-theory/perform.ts';
import { countInTick, countInVoice } from '../../shared-theory/sound/clicks.ts';
import { STEEL } from '../../shared-theory/sound/instrument.ts';
import { performanceGain } from '../../shared-theory/sound/mix.ts';
import { noteShelf, type NoteShelf } from '../../shared-theory/sound/note-shelf.ts';
import { parseVamp, type VoicedVamp } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';
import { fiveRuns, middle, type Bench } from './row.ts';

const RATE = 48_000;

/** From the press to the first sound, in milliseconds; the press's own way through room and browser takes of it too. */
const FIRST_SOUND_MS = 1000;
/** So often must the work before it fit into that second: a class laptop is slower, and does other things. */
const LEAST_TIMES_IN_A_SECOND = 4;
/** And so often must the work for the first bar fit under the count-in. */
const LEAST_TIMES_UNDER_COUNT_IN = 2;

/** An hour of class: so many rounds, each played round and round. */
const ROUNDS = 16;
const ROUND_SECONDS = 3600 / ROUNDS;
/** A shelf a fifth as large as the host's is full before half time. */
const KEPT_SECONDS = 96;
/** Memory at the end of the hour beside that at half time. */
const MOST_GROWTH = 1.1;

const VAMP: VoicedVamp = voice({
  slots: parseVamp('Em D', 4),
  groove: 'relaxed-alternate',
  tempo: 100,
  seed: 1,
});

/** What the host does between the press and the first tick: the loops that come, and all the sounds of the count-in. */
function beforeFirstTick(): void {
  const { beats } = countIn(VAMP.meter, VAMP.tempo);
  barsOf(perform(VAMP, { loops: 6, human: true }));
  for (const { number, accented } of beats) {
    countInTick(accented, RATE);
    countInVoice(number, accented, RATE);
  }
}

/** What it does under the count-in: every sound of the loop, and how loud it is. */
function underCountIn(): void {
  const shelf = noteShelf(RATE);
  const loop = withBand(VAMP, perform(VAMP), { kit: true, bass: true });
  for (const render of shelf.missing(loop)) render();
  performanceGain(loop, shelf);
}

function fitting(name: string, work: () => void, room: number, against: string, least: number): Bench {
  return async () => {
    const { times } = await fiveRuns(work);
    const { median, spread } = middle(times.map((time) => room / time));
    return {
      name,
      value: middle(times).median,
      unit: 'ms',
      baseline: room,
      against,
      ratio: median,
      budget: `at least ${least} times into it`,
      within: median >= least,
      spread,
    };
  };
}

/** Megabytes in use once all that nobody needs is gone; memory of samples is given back only after the collection. */
async function megabytes(): Promise<number> {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  for (let pass = 0; pass < 2; pass++) {
    collect();
    await new Promise((resolve) => {
      setTimeout(resolve, 5);
    });
  }
  const { heapUsed, external } = process.memoryUsage();
  return (heapUsed + external) / 1e6;
}

/** Takes every sound of a round's bars, as they come round and round. */
function playRound(shelf: NoteShelf, seed: number): void {
  const { vamp } = generate({ level: 6, seed });
  const loops = Math.ceil(ROUND_SECONDS / perform(vamp).seconds);
  const performance = withBand(vamp, perform(vamp, { loops, human: true }), { kit: true, bass: true });
  performanceGain(withBand(vamp, perform(vamp), { kit: true, bass: true }), shelf);
  for (const { notes, kit, bass } of barsOf(performance)) {
    for (const note of notes) shelf.take(note);
    for (const strike of kit) shelf.takeKit(strike);
    for (const note of bass) shelf.takeBass(note);
  }
}

const hourOfMemory: Bench = async () => {
  const shelf = noteShelf(RATE, STEEL, { keptSeconds: KEPT_SECONDS });
  const used: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    playRound(shelf, round);
    used.push(await megabytes());
  }
  const half = used[ROUNDS / 2 - 1] ?? Number.NaN;
  const end = used.at(-1) ?? Number.NaN;
  const later = used.slice(ROUNDS / 2 - 1).map((value) => value / half);
  return {
    name: 'memory over an hour of rounds',
    value: end,
    unit: 'MB',
    baseline: half,
    against: 'half time',
    ratio: end / half,
    budget: `at most ${MOST_GROWTH} times`,
    within: end / half <= MOST_GROWTH,
    spread: [Math.min(...later), Math.max(...later)],
  };
};

export const liveBenches: readonly Bench[] = [
  fitting('work before the first tick', beforeFirstTick, FIRST_SOUND_MS, 'a second', LEAST_TIMES_IN_A_SECOND),
  fitting(
    'work under the count-in',
    underCountIn,
    countIn(VAMP.meter, VAMP.tempo).seconds * 1000,
    'the count-in',
    LEAST_TIMES_UNDER_COUNT_IN,
  ),
  hourOfMemory,
];
