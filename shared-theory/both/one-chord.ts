import type { Quality } from '../chords.ts';
import { bassOf, shapeNotes, shapesFor, STANDARD_TUNING } from '../neck.ts';
import { midiPitchClass } from '../pitch.ts';
import type { NeckPlace } from '../questions/question.ts';
import type { Frets, VoicedVamp } from '../vamps.ts';
import { cheapest, evenly, handMoves, rootName, unlike, unlikeMoved, type BothReadings } from './readings.ts';

function rootString(frets: Frets): number {
  return shapeNotes(frets)[0]?.string ?? 0;
}

/**
 * The chord with the answered quality, then as it is, on one root and one string. Where its own shape has no neighbour in the
 * other quality (open G, G minor), both are played in a form that has: no more than the notes above the root should differ.
 */
export function qualityReadings(vamp: VoicedVamp, target: number, quality: Quality): BothReadings | null {
  const slot = vamp.slots[target];
  if (!slot) return null;
  const chord = { root: slot.chord.root, quality };
  const pairs = [slot.frets, ...shapesFor(slot.chord)].flatMap((right) =>
    shapesFor(chord)
      .filter((wrong) => bassOf(wrong) === bassOf(right) && rootString(wrong) === rootString(right))
      .map((wrong) => ({ wrong, right })),
  );
  const pair = cheapest(pairs, ({ wrong, right }) => unlike(right, slot.frets) + 2 * handMoves(wrong, right));
  return (
    pair && {
      wrong: evenly([{ ...slot, chord, frets: pair.wrong }], vamp),
      right: evenly([{ ...slot, frets: pair.right }], vamp),
    }
  );
}

/** The chord moved to the answered root, then where it is. */
export function rootReadings(vamp: VoicedVamp, target: number, place: NeckPlace): BothReadings | null {
  const slot = vamp.slots[target];
  if (!slot) return null;
  const sound = midiPitchClass(STANDARD_TUNING[place.string === 6 ? 0 : 1] + place.fret);
  const { quality } = slot.chord;
  const chord = { root: rootName(sound, quality, vamp.slots), quality };
  const frets = cheapest(shapesFor(chord), (shape) => unlikeMoved(shape, slot.frets));
  return frets && { wrong: evenly([{ ...slot, chord, frets }], vamp), right: evenly([slot], vamp) };
}
