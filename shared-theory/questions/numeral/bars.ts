import type { Chord } from '../../chords.ts';
import { chordIndices, differentSlots } from '../../different-chords.ts';
import type { SlashRule } from '../../different-chords.ts';
import { itemAt } from '../../items.ts';
import { MOST_NUMERALS } from './ask.ts';

/** In which bars of the pad the chords of a loop may be written. */
export type Bars = {
  /** The slots where the chords that are asked about sound for the first time. */
  readonly first: readonly number[];
  /**
   * What else may be written than one numeral for each of them: by bar, the index of its chord among them. A chord comes again, so
   * none has a numeral for each chord alone.
   */
  readonly ways: readonly (readonly number[])[];
};

/**
 * Numerals are asked of the different chords whatever their bass. Who writes the loop slot by slot, where the pad has a bar for
 * each, says as much; and so does who writes a chord again over another bass, where the class counts that as another.
 */
export function barsOf(chords: readonly Chord[], rule: SlashRule): Bars {
  const indices = chordIndices(chords);
  const first = differentSlots(chords);
  const counted = differentSlots(chords, rule)
    .slice(0, MOST_NUMERALS)
    .map((slot) => itemAt(indices, slot));
  const wholeLoop = chords.length <= MOST_NUMERALS ? [indices] : [];
  const ways = [counted, ...wholeLoop].filter((way) => new Set(way).size < way.length);
  return { first, ways };
}

/** One numeral for each chord, where an answer has it again in each of the chord's bars; any other answer as it stands. */
export function folded(answer: readonly string[], { first, ways }: Bars): readonly string[] {
  const way = ways.find((each) => each.length === answer.length && new Set(each).size === first.length);
  if (way === undefined) return answer;
  const byChord = first.map((_, chord) => itemAt(answer, way.indexOf(chord)));
  return way.every((chord, bar) => answer[bar] === byChord[chord]) ? byChord : answer;
}
