import { modulo, pitchClass } from '../../pitch.ts';
import type { Truth } from '../../truth.ts';
import { OCTAVE } from './ask.ts';

/** Semitones from home as the line counts them; null at home, and where the bass says another way than the roots can go. */
export function placeOnLine(truth: Pick<Truth, 'roots' | 'directions'>, slot: number): number | null {
  const [home, root] = [truth.roots[0], truth.roots[slot]];
  const direction = truth.directions[slot - 1];
  if (home === undefined || root === undefined || direction === undefined) return null;
  const above = modulo(pitchClass(root) - pitchClass(home), OCTAVE);
  if (direction === 'same') return above === 0 ? 0 : null;
  return direction === 'up' ? above || OCTAVE : above - OCTAVE;
}
