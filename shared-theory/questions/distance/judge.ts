import { modulo, pitchClass } from '../../pitch.ts';
import { needed, notRight, RIGHT } from '../marks.ts';
import type { AskedOf, Judge } from '../question.ts';
import { OCTAVE } from './ask.ts';

/** How far, counted on the major scale of the first root, and which way. */
export const distanceJudge: Judge<'distance'> = {
  kind: 'distance',
  truth: rightDistance,
  mark: (answer, context) =>
    answer === needed(rightDistance(context), 'distance', context.target) ? RIGHT : notRight(0, null),
  also: () => [],
  heard: (answer) => String(answer),
  chance: () => 1 / (2 * OCTAVE + 1),
};

/** Semitones from home as the line counts them; null where the bass says another way than the roots can go. */
function rightDistance({ truth, target }: AskedOf): number | null {
  const [home, root] = [truth.roots[0], truth.roots[target]];
  const direction = truth.directions[target - 1];
  if (home === undefined || root === undefined || direction === undefined) return null;
  const above = modulo(pitchClass(root) - pitchClass(home), OCTAVE);
  if (direction === 'same') return above === 0 ? 0 : null;
  return direction === 'up' ? above || OCTAVE : above - OCTAVE;
}
