import type { Quality } from '../chords.ts';
import { bassOf, shapeNotes, shapesFor, STANDARD_TUNING } from '../neck.ts';
import { midiPitchClass } from '../pitch.ts';
import type { NeckPlace } from '../questions/question.ts';
import type { Frets, VoicedVamp } from '../vamps.ts';
import { cheapest, evenly, nearestShape, rootName, unlike, type BothReadings } from './readings.ts';

/** Far more than any two shapes are unlike: what sounds keeps its own shape wherever the other can be played beside it. */
const OWN_SHAPE = 1000;

function rootString(frets: Frets): number {
  return shapeNotes(frets)[0]?.string ?? 0;
}

/** The chord with the answered quality, then as it is, on one root and on one string: only what lies above the root differs. */
export function qualityReadings(vamp: VoicedVamp, target: number, quality: Quality): BothReadings | null {
  const slot = vamp.slots[target];
  if (!slot) return null;
  const chord = { root: slot.chord.root, quality };
  const pairs = [slot.frets, ...shapesFor(slot.chord)].flatMap((right) =>
    shapesFor(chord)
      .filter((wrong) => bassOf(wrong) === bassOf(right) && rootString(wrong) === rootString(right))
      .map((wrong) => ({ wrong, right })),
  );
  const pair = cheapest(pairs, ({ wrong, right }) => OWN_SHAPE * unlike(right, slot.frets) + unlike(wrong, right));
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
  const frets = nearestShape(chord, slot.frets);
  return frets && { wrong: evenly([{ ...slot, chord, frets }], vamp), right: evenly([slot], vamp) };
}
