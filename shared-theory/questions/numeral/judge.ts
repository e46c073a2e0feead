import type { Chord } from '../../chords.ts';
import { differentChords } from '../../different-chords.ts';
import { pitchClass } from '../../pitch.ts';
import type { Truth } from '../../truth.ts';
import type { ErrorKind, NoteKind } from '../error-kinds.ts';
import { firstShown, FOLLOWS, needed, notRight, ownAnswer, RIGHT } from '../marks.ts';
import { chordsOf, ownChords, questionsOfKinds } from '../own-chords.ts';
import type { AskedOf, Judge, MarkingContext } from '../question.ts';
import { MOST_NUMERALS, numeralAsk } from './ask.ts';
import { barsOf, folded } from './bars.ts';
import type { Bars } from './bars.ts';
import type { Numeral } from './numerals.ts';
import { readNumeral } from './numerals.ts';
import type { Fit, Reading } from './readings.ts';
import { countedFromHome, fitOf, readingsOf, textsOf } from './readings.ts';

/** Credit of one numeral; the whole answer earns the mean. */
const CREDIT: Readonly<Record<Fit, number>> = { right: 1, own: 1, case: 0.5, sign: 0.5, flat: 0.5, wrong: 0 };

/** The triads of a major key: what someone who heard nothing would write. */
export const CHART = ['I', 'ii', 'iii', 'IV', 'V', 'vi', 'viio'] as const;

/** Numerals in any key that owns all chords or nearly so, in its relative minor, or from another home that makes a valid reading. */
export const numeralJudge: Judge<'numeral'> = {
  kind: 'numeral',
  truth: (context) => roundNumerals(context).right[0] ?? null,
  mark: (answer, context) => {
    const round = roundNumerals(context);
    needed(round.right[0], 'numeral', context.target);
    const note = round.notes.get(numeralAsk.key(answer));
    if (note !== undefined) return note === null ? RIGHT : { ...RIGHT, note };
    const byChord = folded(answer, round.bars);
    const numerals = byChord.map(readNumeral);
    const best = bestFit(numerals, round, context);
    if (best.credit === 1 || followsOwnChords(byChord, context)) return FOLLOWS;
    return notRight(best.credit, errorOf(numerals, best.fits, round));
  },
  also: (context) => roundNumerals(context).right.slice(1),
  heard: numeralAsk.key,
  chance: (context) => {
    const { right, asked } = roundNumerals(context);
    const bars = Math.max(1, asked.length);
    const ofChart = (answer: readonly string[]) => answer.every((each) => CHART.some((numeral) => numeral === each));
    return right.filter((answer) => answer.length === bars && ofChart(answer)).length / CHART.length ** bars;
  },
  leansOn: (_target, questions) => questionsOfKinds(questions, ['quality', 'seventh', 'distance']),
};

/** What the answers to one round are held against. */
type RoundNumerals = {
  readonly readings: readonly Reading[];
  /** Every right answer, the one in the key that is named first before the others; then those that write a chord again. */
  readonly right: readonly (readonly string[])[];
  /** What is said beside each right answer, by its key. */
  readonly notes: ReadonlyMap<string, NoteKind | null>;
  /** The chords that are asked about, and their slots. */
  readonly asked: readonly Chord[];
  readonly slots: readonly number[];
  readonly bars: Bars;
  /** The first chord is the one of a key that owns the loop, major or minor. */
  readonly homeIsOne: boolean;
};

/** Worked out once for each truth and what the class counts: thousands of answers are held against it. */
const worked = new WeakMap<Truth, Readonly<Record<string, RoundNumerals>>>();

function roundNumerals({ truth, settings }: AskedOf): RoundNumerals {
  const { policy, slashIsNew = false } = settings;
  const rules = `${policy} ${slashIsNew}`;
  const known = worked.get(truth)?.[rules];
  if (known !== undefined) return known;
  const chords = chordsOf(truth);
  const bars = barsOf(chords, { slashIsNew });
  const { first } = bars;
  const different = first.flatMap((slot) => chords[slot] ?? []);
  // A foreign bass over a chord that came before is a note that a key must hold.
  const overBass = differentChords(chords, { slashIsNew: true }).filter((chord) => !different.includes(chord));
  const readings = readingsOf([...different, ...overBass], Math.min(MOST_NUMERALS, different.length), policy);
  const notes = new Map<string, NoteKind | null>();
  const right: (readonly string[])[] = [];
  const add = (text: readonly string[], note: NoteKind | null) => {
    const key = numeralAsk.key(text);
    if (notes.has(key)) return;
    notes.set(key, note);
    right.push(text);
  };
  for (const reading of readings) for (const text of textsOf(reading)) add(text, reading.note);
  const byChord = right.slice();
  for (const text of byChord) {
    const note = notes.get(numeralAsk.key(text)) ?? null;
    for (const way of bars.ways)
      add(
        way.flatMap((chord) => text[chord] ?? []),
        note,
      );
  }
  const [home] = different;
  const round: RoundNumerals = {
    readings,
    right,
    notes,
    asked: different.slice(0, MOST_NUMERALS),
    slots: first.slice(0, MOST_NUMERALS),
    bars,
    homeIsOne: readings.some(
      ({ one, note }) => note !== 'counted-from-a-modal-home' && home !== undefined && one === pitchClass(home.root),
    ),
  };
  worked.set(truth, { ...worked.get(truth), [rules]: round });
  return round;
}

/** The reading that an answer comes nearest to: most credit, then fewest wrong degrees. Bars too few or too many are wrong. */
function bestFit(numerals: readonly Numeral[], { readings, asked, slots }: RoundNumerals, context: MarkingContext) {
  const bars = Math.max(asked.length, numerals.length);
  const own = slots.map((slot) => ownAnswer(context, 'quality', slot));
  let best = { fits: [] as readonly Fit[], credit: 0, wrong: Infinity };
  for (const { places } of readings) {
    const fits = Array.from({ length: bars }, (_, bar) => fitOf(numerals[bar], places[bar] ?? [], own[bar] ?? null));
    const credit = fits.reduce((sum, fit) => sum + CREDIT[fit], 0) / bars;
    const wrong = fits.filter((fit) => fit === 'wrong').length;
    if (credit > best.credit || (credit === best.credit && wrong < best.wrong)) best = { fits, credit, wrong };
  }
  return best;
}

/** Whether an answer is right for the chords as the student's own answers have them, however wrong those were. */
function followsOwnChords(answer: readonly string[], context: MarkingContext): boolean {
  const own = ownChords(context, 0);
  if (own === null) return false;
  const key = numeralAsk.key(answer);
  return readingsOf(own, MOST_NUMERALS, context.settings.policy).some((reading) =>
    textsOf(reading).some((text) => numeralAsk.key(text) === key),
  );
}

function errorOf(
  numerals: readonly Numeral[],
  fits: readonly Fit[],
  { asked, homeIsOne }: RoundNumerals,
): ErrorKind | null {
  const fromHome = homeIsOne ? null : countedFromHome(numerals, asked);
  const degreesRight = !fits.includes('wrong');
  return firstShown([
    ['takes-home-for-one', fromHome === 'counted'],
    ['numeral-case-wrong', degreesRight && fits.includes('case')],
    ['flat-sign-missing', fromHome === 'flat' || (degreesRight && fits.includes('flat'))],
  ]);
}
