import { chordPitchClasses } from '../../chords.ts';
import type { Chord } from '../../chords.ts';
import { chordIndices, otherIndices } from '../../different-chords.ts';
import { firstShown, needed, notRight, RIGHT } from '../marks.ts';
import { chordsOf } from '../own-chords.ts';
import type { AskedOf, Judge, MarkingContext } from '../question.ts';
import { MOST_CHORDS } from './ask.ts';

/** Two triads that share so many notes are close: a relative or a mediant. */
const CLOSE_NOTES = 2;

/** How many different chords. One over another bass is the same, unless the class counts it as another. */
export const countJudge: Judge<'count'> = {
  kind: 'count',
  truth: rightCount,
  mark: (answer, context) => {
    const right = needed(rightCount(context), 'count', context.target);
    if (answer === right || alsoRight(context).includes(answer)) return RIGHT;
    const { beside } = context;
    const error = firstShown([
      ['counts-the-changes', answer === beside.slots],
      ['merges-close-chords', answer === right - 1 && (hasClosePair(beside.chords) || newByItsBass(context))],
      ['splits-one-chord', answer === right + 1 && beside.sameChordVaries],
      ['hears-no-change', answer === 1],
    ]);
    const misheard = error === 'merges-close-chords' || error === 'splits-one-chord';
    return notRight(Math.abs(answer - right) === 1 ? (misheard ? 0.5 : 0.3) : 0, error);
  },
  also: alsoRight,
  heard: (answer) => String(answer),
  chance: (context) => (1 + alsoRight(context).length) / MOST_CHORDS,
};

function rightCount({ truth, settings }: AskedOf): number | null {
  const count = settings.slashIsNew === true ? new Set(chordIndices(chordsOf(truth), settings)).size : truth.count;
  return count <= MOST_CHORDS ? count : null;
}

/** The numbers of those who hear one chord where the same notes come back over another bass. */
function alsoRight(asked: AskedOf): readonly number[] {
  const right = rightCount(asked);
  const others = otherIndices(chordsOf(asked.truth), asked.settings).map((indices) => new Set(indices).size);
  return [...new Set(others)].filter((count) => count !== right && count <= MOST_CHORDS);
}

/** Whether a chord comes back over another bass where the class counts that as another chord. */
function newByItsBass({ settings: { slashIsNew = false }, beside }: MarkingContext): boolean {
  return slashIsNew && beside.sameChordVaries;
}

/** Whether two of the different chords share most of their notes. */
function hasClosePair(chords: readonly Chord[]): boolean {
  return chords.some((chord, index) => {
    const sounds = chordPitchClasses(chord);
    const shared = (other: Chord) => chordPitchClasses(other).filter((sound) => sounds.includes(sound)).length;
    return chords.slice(index + 1).some((other) => shared(other) >= CLOSE_NOTES);
  });
}
