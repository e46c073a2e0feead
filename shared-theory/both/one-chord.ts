import { overRoot, qualityAdditions, soundsAsOverBass, triadOf, type Chord, type Quality } from '../chords.ts';
import { bassOf, shapeNotes, shapesFor, STANDARD_TUNING } from '../neck.ts';
import { midiPitchClass, pitchClass, type PitchClass } from '../pitch.ts';
import type { AskedSeventh, NeckPlace } from '../questions/question.ts';
import type { Frets, VoicedSlot, VoicedVamp } from '../vamps.ts';
import { cheapest, evenly, handMoves, rootName, unlike, unlikeMoved, type BothReadings } from './readings.ts';

function rootString(frets: Frets): number {
  return shapeNotes(frets)[0]?.string ?? 0;
}

/** A chord in another way, then as it is, on one root and one string, each as unlike as the two chords make it and no more. */
function onOneRoot(vamp: VoicedVamp, slot: VoicedSlot, wrongChord: Chord, rightChord: Chord): BothReadings | null {
  const own = soundsAsOverBass(slot.chord, rightChord) ? [slot.frets] : [];
  const pairs = [...own, ...shapesFor(rightChord)].flatMap((right) =>
    shapesFor(wrongChord)
      .filter((wrong) => bassOf(wrong) === bassOf(right) && rootString(wrong) === rootString(right))
      .map((wrong) => ({ wrong, right })),
  );
  const pair = cheapest(pairs, ({ wrong, right }) => unlike(right, slot.frets) + 2 * handMoves(wrong, right));
  return (
    pair && {
      wrong: evenly([{ ...slot, chord: wrongChord, frets: pair.wrong }], vamp),
      right: evenly([{ ...slot, chord: rightChord, frets: pair.right }], vamp),
    }
  );
}

/**
 * The chord with the answered quality, then as it is, on one root and one string. Where its own shape has no neighbour in the
 * other quality (open G, G minor), both are played in a form that has: no more than the notes above the root should differ. A
 * slash chord stands on its root in both, and where the other quality has no such seventh both do without.
 */
export function qualityReadings(vamp: VoicedVamp, target: number, quality: Quality): BothReadings | null {
  const slot = vamp.slots[target];
  if (!slot) return null;
  const right = overRoot(slot.chord);
  const keeps = right.addition === undefined || qualityAdditions(quality).includes(right.addition);
  return keeps
    ? onOneRoot(vamp, slot, { ...right, quality }, right)
    : onOneRoot(vamp, slot, { root: right.root, quality }, triadOf(right));
}

/** The chord with the answered seventh, then with its own; null where its quality has no such seventh. */
export function seventhReadings(vamp: VoicedVamp, target: number, seventh: AskedSeventh): BothReadings | null {
  const slot = vamp.slots[target];
  if (!slot) return null;
  const right = overRoot(slot.chord);
  if (seventh === 'none') return onOneRoot(vamp, slot, triadOf(right), right);
  if (!qualityAdditions(right.quality).includes(seventh)) return null;
  return onOneRoot(vamp, slot, { ...right, addition: seventh }, right);
}

function soundAt({ string, fret }: NeckPlace): PitchClass {
  return midiPitchClass(STANDARD_TUNING[string === 6 ? 0 : 1] + fret);
}

/** The chord over the answered bass, then over its own; null where no hand can play it. */
export function bassReadings(vamp: VoicedVamp, target: number, place: NeckPlace): BothReadings | null {
  const slot = vamp.slots[target];
  if (!slot) return null;
  const sound = soundAt(place);
  const right = overRoot(slot.chord);
  const bass = rootName(sound, 'major', vamp.slots);
  const chord = sound === pitchClass(right.root) ? right : { ...right, bass };
  const frets = cheapest(shapesFor(chord), (shape) => unlike(shape, slot.frets));
  return frets && { wrong: evenly([{ ...slot, chord, frets }], vamp), right: evenly([slot], vamp) };
}

/** The chord moved to the answered root, then where it is. */
export function rootReadings(vamp: VoicedVamp, target: number, place: NeckPlace): BothReadings | null {
  const slot = vamp.slots[target];
  if (!slot) return null;
  const chord = { ...overRoot(slot.chord), root: rootName(soundAt(place), slot.chord.quality, vamp.slots) };
  const frets = cheapest(shapesFor(chord), (shape) => unlikeMoved(shape, slot.frets));
  return frets && { wrong: evenly([{ ...slot, chord, frets }], vamp), right: evenly([slot], vamp) };
}
