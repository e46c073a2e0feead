import { overRoot, soundsAs, type Chord } from '../chords.ts';
import { bassOf, shapesFor } from '../neck.ts';
import { pitchClass } from '../pitch.ts';
import { directionOf, type Direction } from '../truth.ts';
import type { Frets, VoicedSlot, VoicedVamp } from '../vamps.ts';
import { cheapest, evenly, handyShape, rootName, unlike, unlikeMoved, type BothReadings } from './readings.ts';

const FOURTH = 5;
/** Home moves only where the other chord cannot. */
const HOME_WEIGHT = 2;

type Pair = readonly [home: VoicedSlot, other: VoicedSlot];

function pairAt(vamp: VoicedVamp, target: number): Pair | null {
  const [home, other] = [vamp.slots[0], vamp.slots[target]];
  return home && other && target > 0 ? [home, other] : null;
}

/** Home and a second chord in the shapes that fit, as near as can be to those that sounded; null where none fit. */
function nearestPair(
  [home, other]: Pair,
  chord: Chord,
  fits: (from: number, to: number) => boolean,
): readonly VoicedSlot[] | null {
  // Home again is the same shape again.
  const near = soundsAs(chord, home.chord) ? home.frets : other.frets;
  const moved = soundsAs(chord, home.chord) || soundsAs(chord, other.chord) ? unlike : unlikeMoved;
  const shapes = shapesFor(home.chord).flatMap((first) =>
    shapesFor(chord)
      .filter((second) => fits(bassOf(first), bassOf(second)))
      .map((second): readonly [Frets, Frets] => [first, second]),
  );
  const best = cheapest(shapes, ([first, second]) => HOME_WEIGHT * unlike(first, home.frets) + moved(second, near));
  return (
    best && [
      { ...home, frets: best[0] },
      { ...other, chord, frets: best[1] },
    ]
  );
}

/** Home, then the chord with its bass where it was answered to go; then as it went. */
export function directionReadings(vamp: VoicedVamp, target: number, direction: Direction): BothReadings | null {
  const pair = pairAt(vamp, target);
  if (!pair) return null;
  const wrong = answeredDirection(pair, direction, vamp);
  return wrong && { wrong: evenly(wrong, vamp), right: evenly(pair, vamp) };
}

function answeredDirection(pair: Pair, direction: Direction, vamp: VoicedVamp): readonly VoicedSlot[] | null {
  const [home, other] = pair;
  const goes = (from: number, to: number) => directionOf(from, to) === direction;
  const same = nearestPair(pair, other.chord, goes);
  if (same) return same;
  // A bass can only stay where the roots are one.
  if (direction === 'same') return [home, { ...home, beats: other.beats }];
  // No octave of the chord lies that way: a chord a fourth away does.
  const { quality } = other.chord;
  const fourth = direction === 'up' ? FOURTH : -FOURTH;
  const root = rootName(pitchClass(home.chord.root) + fourth, quality, vamp.slots);
  return nearestPair(pair, { ...overRoot(other.chord), root }, (from, to) => to - from === fourth);
}

/** The same two chords on their roots, which the distance is counted between; null where one has no such shape. */
function onRoots(pair: Pair): Pair | null {
  const [home, other] = pair.map((slot) => {
    if (slot.chord.bass === undefined) return slot;
    const chord = overRoot(slot.chord);
    const frets = handyShape(chord, slot.frets);
    return frets && { ...slot, chord, frets };
  });
  return home && other ? [home, other] : null;
}

/** Home, then the chord moved to the answered distance, on that side of home; then where it was. */
export function distanceReadings(vamp: VoicedVamp, target: number, semitones: number): BothReadings | null {
  const sounded = pairAt(vamp, target);
  const pair = sounded && onRoots(sounded);
  if (!pair) return null;
  const [home, other] = pair;
  const root = rootName(pitchClass(home.chord.root) + semitones, other.chord.quality, vamp.slots);
  const wrong = nearestPair(pair, { ...other.chord, root }, (from, to) => to - from === semitones);
  return wrong && { wrong: evenly(wrong, vamp), right: evenly(pair, vamp) };
}
