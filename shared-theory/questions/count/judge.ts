import { chordPitchClasses, soundsAs } from '../../chords.ts';
import type { Beside } from '../beside.ts';
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
      ['counts-the-changes', answer === beside.chords.length],
      ['merges-close-chords', answer === right - 1 && hasCloseChords(beside)],
      ['splits-one-chord', answer === right + 1 && hasChordInTwoCoats(beside)],
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

/** Whether two different chords of the loop share most of their notes. */
function hasCloseChords({ chords }: Beside): boolean {
  return pairsOf(chords.length).some(([one, other]) => {
    const [first, second] = [chords[one], chords[other]];
    if (!first || !second || soundsAs(first, second)) return false;
    const sounds = chordPitchClasses(second);
    return chordPitchClasses(first).filter((sound) => sounds.includes(sound)).length >= CLOSE_NOTES;
  });
}

/** Whether one chord sounds in two ways: over two basses in turn, or coming back with another bass or another note on top. */
function hasChordInTwoCoats({ chords, bass, bassAlternates, top }: Beside): boolean {
  if (bassAlternates) return true;
  return pairsOf(chords.length).some(([one, other]) => {
    const [first, second] = [chords[one], chords[other]];
    return first && second && soundsAs(first, second) && (bass[one] !== bass[other] || top[one] !== top[other]);
  });
}

/** Every pair of slots of a loop, the earlier one first. */
function pairsOf(slots: number): readonly (readonly [number, number])[] {
  return Array.from({ length: slots }, (_, one) =>
    Array.from({ length: slots - one - 1 }, (_each, step) => [one, one + step + 1] as const),
  ).flat();
}
