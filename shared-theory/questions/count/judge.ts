import { chordPitchClasses } from '../../chords.ts';
import type { Chord } from '../../chords.ts';
import { firstShown, needed, notRight, RIGHT } from '../marks.ts';
import type { AskedOf, Judge } from '../question.ts';
import { MOST_CHORDS } from './ask.ts';

/** Two triads that share so many notes are close: a relative or a mediant. */
const CLOSE_NOTES = 2;

/** How many different chords. */
export const countJudge: Judge<'count'> = {
  kind: 'count',
  truth: rightCount,
  mark: (answer, context) => {
    const right = needed(rightCount(context), 'count', context.target);
    if (answer === right) return RIGHT;
    const { beside } = context;
    const error = firstShown([
      ['counts-the-changes', answer === beside.slots],
      ['merges-close-chords', answer === right - 1 && hasClosePair(beside.chords)],
      ['splits-one-chord', answer === right + 1 && beside.sameChordVaries],
      ['hears-no-change', answer === 1],
    ]);
    const misheard = error === 'merges-close-chords' || error === 'splits-one-chord';
    return notRight(Math.abs(answer - right) === 1 ? (misheard ? 0.5 : 0.3) : 0, error);
  },
  also: () => [],
  heard: (answer) => String(answer),
  chance: () => 1 / MOST_CHORDS,
};

function rightCount({ truth }: AskedOf): number | null {
  return truth.count <= MOST_CHORDS ? truth.count : null;
}

/** Whether two of the different chords share most of their notes. */
function hasClosePair(chords: readonly Chord[]): boolean {
  return chords.some((chord, index) => {
    const sounds = chordPitchClasses(chord);
    const shared = (other: Chord) => chordPitchClasses(other).filter((sound) => sounds.includes(sound)).length;
    return chords.slice(index + 1).some((other) => shared(other) >= CLOSE_NOTES);
  });
}
