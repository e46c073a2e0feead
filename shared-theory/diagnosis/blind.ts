import { QUALITIES } from '../chords.ts';
import { pickOne, seededRandom } from '../random.ts';
import { WEIGHTS } from '../questions/accents/ask.ts';
import { asks } from '../questions/asks.ts';
import { BAR_COUNTS } from '../questions/bar-count/ask.ts';
import { MOST_CHORDS } from '../questions/count/ask.ts';
import { OCTAVE } from '../questions/distance/ask.ts';
import { MOST_HOMES } from '../questions/home/ask.ts';
import { differentChords } from '../different-chords.ts';
import { judgeOf } from '../questions/judges.ts';
import { blindKeySets, LONGEST_ARC } from '../questions/keys/guesses.ts';
import { MOST_NUMERALS } from '../questions/numeral/ask.ts';
import { CHART } from '../questions/numeral/judge.ts';
import { chordsOf } from '../questions/own-chords.ts';
import { ORDERS } from '../questions/order/ask.ts';
import type { Answer, AskedOf, Kind } from '../questions/question.ts';
import { ROLES } from '../questions/roles/ask.ts';
import { neckPlaces } from '../questions/root/ask.ts';
import { ASKED_SEVENTHS } from '../questions/seventh/ask.ts';
import { GRID_STROKES } from '../questions/stroke-grid/ask.ts';

/**
 * The answers that somebody gives who has heard nothing, each as likely as any other: every answer of the pad; of keys the arcs
 * of neighbours, of numerals the triads of a major key on as many bars as are right, of grids so many filled by lot, of taps a tempo
 * that feet walk at. How steady hands are that hear nothing, nobody knows.
 */
export function blindAnswers(kind: Kind, context: AskedOf): readonly Answer[] {
  const read = (value: unknown): readonly Answer[] => {
    const answer = asks[kind].read(value, context.settings);
    return answer === null ? [] : [answer];
  };
  switch (kind) {
    case 'tempo':
      return tappedBlindly().flatMap(read);
    case 'steadiness':
    case 'drop-out':
    case 'together':
      return [];
    case 'bar-count':
      return BAR_COUNTS;
    case 'threes':
    case 'half-time':
    case 'swing':
    case 'drive':
    case 'strokes':
    case 'pendulum':
    case 'change-place':
      return PAIRS[kind].flatMap(read);
    case 'accents':
      return filledByLot(WEIGHTS, context).flatMap(read);
    case 'stroke-grid':
      return filledByLot(GRID_STROKES, context).flatMap(read);
    case 'roles':
      return filledByLot(ROLES, context).flatMap(read);
    case 'opened':
      return filledByLot([false, true], context)
        .map((slots) => slots.flatMap((isOpen, slot) => (isOpen ? [slot] : [])))
        .flatMap(read);
    case 'count':
      return Array.from({ length: MOST_CHORDS }, (_, index) => index + 1);
    case 'order':
      return ORDERS;
    case 'direction':
      return ['up', 'down', 'same'].flatMap(read);
    case 'quality':
      return QUALITIES.flatMap(read);
    case 'bass':
    case 'root':
      return neckPlaces(context.settings.capo);
    case 'seventh':
      return ASKED_SEVENTHS;
    case 'distance':
      return Array.from({ length: 2 * OCTAVE + 1 }, (_, index) => index - OCTAVE);
    case 'numeral':
      return numerals(context);
    case 'one-or-several':
      return ['one', 'several'].flatMap(read);
    case 'keys':
      return blindKeySets(context.settings.policy, LONGEST_ARC, differentChords(chordsOf(context.truth)).length);
    case 'settler':
      return blindKeySets(context.settings.policy, LONGEST_ARC, 0);
    case 'home':
      return Array.from({ length: MOST_HOMES }, (_, index) => index);
  }
}

/** The answers of pads that have two. */
const PAIRS = {
  threes: ['two-threes', 'three-twos'],
  'half-time': ['full-time', 'half-time'],
  swing: ['straight', 'swung'],
  drive: ['driving', 'relaxed'],
  strokes: ['all-downs', 'down-up'],
  pendulum: ['keeps', 'breaks'],
  'change-place': ['on-one', 'pushed'],
} as const;

/** Grids that are filled blindly: enough to tell what lots show by the hundredth. */
const LOTS = 400;

/** Fillings of the beat grid, each slot by lot, always the same ones; none where no groove is known. */
function filledByLot<T>(choices: readonly T[], { truth: { rhythm } }: AskedOf): readonly (readonly T[])[] {
  if (!rhythm) return [];
  const random = seededRandom(LOTS, rhythm.grid);
  const slots = rhythm.accents.map((_, slot) => slot);
  return Array.from({ length: LOTS }, () => slots.map(() => pickOne(random, choices)));
}

/** Tempi that feet walk at, beats a minute, each so much faster than the one before. */
const SLOWEST = 40;
const FASTEST = 208;
const FASTER = 1.04;
const TAPS = 12;

function tappedBlindly(): readonly (readonly number[])[] {
  const tempos = Array.from(
    { length: Math.floor(Math.log(FASTEST / SLOWEST) / Math.log(FASTER)) + 1 },
    (_, step) => SLOWEST * FASTER ** step,
  );
  return tempos.map((tempo) => Array.from({ length: TAPS }, (_, tap) => (tap * 60_000) / tempo));
}

function numerals(context: AskedOf): readonly Answer[] {
  const right = judgeOf('numeral').truth(context);
  const bars = Math.min(MOST_NUMERALS, right?.length ?? 0);
  const rows = Array.from({ length: bars }).reduce<readonly (readonly string[])[]>(
    (longer) => longer.flatMap((row) => CHART.map((numeral) => [...row, numeral])),
    [[]],
  );
  // A chord that was named is not named again.
  return rows.filter((row) => new Set(row).size === row.length);
}
