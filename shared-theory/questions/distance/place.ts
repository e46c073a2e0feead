import { bassPitchClass } from '../../chords.ts';
import type { Chord } from '../../chords.ts';
import { modulo, pitchClass } from '../../pitch.ts';
import type { Truth } from '../../truth.ts';
import { chordsOf } from '../own-chords.ts';
import { namesOfSound } from '../same-sound.ts';
import { OCTAVE } from './ask.ts';

type Heard = Pick<Truth, 'chords' | 'directions'>;

/** Semitones from home as the line counts them; null at home, and where the bass says another way than the roots can go. */
export function placeOnLine(truth: Heard, slot: number): number | null {
  return placesOnLine(truth, slot)[0] ?? null;
}

/**
 * Every place on the line that is right, semitones from home; none at home, and where the bass says another way than the roots can
 * go. The bass says which way. Where a bass is not the root either way round is right, the bass's first; and where what sounds
 * may be named from another root, that root's place is as right.
 */
export function placesOnLine(truth: Heard, slot: number): readonly number[] {
  const chords = chordsOf(truth);
  const [home, chord] = [chords[0], chords[slot]];
  const direction = truth.directions[slot - 1];
  if (home === undefined || chord === undefined || direction === undefined) return [];
  const places = namesOfSound(home).flatMap((from) =>
    namesOfSound(chord).flatMap((to) => {
      const above = modulo(pitchClass(to.root) - pitchClass(from.root), OCTAVE);
      const onRoots = standsOn(home, from) && standsOn(chord, to);
      return onRoots ? wayOfTheBass(above, direction) : eitherWay(above, direction);
    }),
  );
  return [...new Set(places)];
}

/** Whether a chord's bass is the root of a reading of it. */
function standsOn(chord: Chord, reading: Chord): boolean {
  return bassPitchClass(chord) === pitchClass(reading.root);
}

function wayOfTheBass(above: number, direction: Truth['directions'][number]): readonly number[] {
  if (direction === 'same') return above === 0 ? [0] : [];
  return [direction === 'up' ? above || OCTAVE : above - OCTAVE];
}

function eitherWay(above: number, direction: Truth['directions'][number]): readonly number[] {
  if (above === 0) return [0, OCTAVE, -OCTAVE];
  const nearestFirst = above <= OCTAVE / 2 ? [above, above - OCTAVE] : [above - OCTAVE, above];
  if (direction === 'same') return nearestFirst;
  return direction === 'up' ? [above, above - OCTAVE] : [above - OCTAVE, above];
}
