import { bassPitchClass, chordPitchClasses, chordSymbol, type Chord } from './chords.ts';
import { frettedRange } from './neck/hand.ts';
import type { SolvedShape } from './neck/search.ts';
import { shapeNotes } from './neck/shape-notes.ts';
import { solveShapes } from './neck/solve.ts';
import { zoneNotes } from './neck/zones.ts';
import { modulo, pitchClass } from './pitch.ts';
import type { Frets } from './vamps.ts';

export { bassOf, shapeNotes, type ShapeNote } from './neck/shape-notes.ts';
export { STANDARD_TUNING } from './neck/tunings.ts';
export { zoneNotes } from './neck/zones.ts';

/** The bass of a shape lies on one of the three low strings, or it is no bass. */
const HIGHEST_BASS_STRING = 4;

/** Shapes with open strings stay near the nut. */
const NUT_FRETS = 4;

/** Over so many strings the bass finger goes a fret further. */
const FULL_STRINGS = 5;

/** An upstroke reaches so many strings: with the bass they hold what makes the chord, or it would be heard in part. */
const UP_STRINGS = 4;

/** Semitones of a diminished and of an augmented fifth. */
const LOWEST_FIFTH = 6;
const HIGHEST_FIFTH = 8;

/** Semitones of a perfect fifth, which a chord with an addition can miss for a stroke. */
const FIFTH = 7;

/** One finger more than the usual shape, a fret further on, in the cost of shapes. */
const ONE_FINGER = 1.8;

/** Whether a class would play a shape at all: the bass on a low string, open strings near the nut. */
function isCommon({ frets }: SolvedShape): boolean {
  const [bass] = shapeNotes(frets);
  if (bass === undefined || bass.string < HIGHEST_BASS_STRING) return false;
  const above = frets.with(6 - bass.string, null);
  return (
    !frets.includes(0) ||
    ((frettedRange(above)?.[1] ?? 0) <= NUT_FRETS &&
      (bass.fret <= NUT_FRETS || (bass.fret === NUT_FRETS + 1 && shapeNotes(frets).length >= FULL_STRINGS)))
  );
}

/** Whether every stroke of a groove finds its notes: the bass, the root or fifth that takes turns with it, the chord above. */
function playsGrooves({ frets }: SolvedShape, chord: Chord): boolean {
  const root = pitchClass(chord.root);
  const [bass, ...others] = shapeNotes(frets);
  const struck = [bass, ...others.slice(-UP_STRINGS)].map((note) => (note?.midi ?? 0) % 12);
  const missed = chordPitchClasses(chord).filter((sound) => !struck.includes(sound));
  const rests = chord.addition === undefined ? null : (root + FIFTH) % 12;
  if (missed.some((sound) => sound !== rests)) return false;
  const [other] = zoneNotes(frets, 'other-bass', root);
  const sound = (other?.midi ?? 0) % 12;
  if (!chordPitchClasses(chord).includes(sound) || sound === bassPitchClass(chord)) return false;
  const up = modulo(sound - root, 12);
  return up === 0 || (up >= LOWEST_FIFTH && up <= HIGHEST_FIFTH);
}

/** The string and fret of a shape's bass. */
function placeOf({ frets }: SolvedShape): string {
  const [bass] = shapeNotes(frets);
  return `${bass?.string} ${bass?.fret}`;
}

function topOf({ frets }: SolvedShape): number | undefined {
  return shapeNotes(frets).at(-1)?.midi;
}

/**
 * For every place of the bass the best shape without open strings, and the best with them where that is easier; beside it the
 * same with another top note for one finger more. Two-note chords ring either way.
 */
function pick(shapes: readonly SolvedShape[], power: boolean): readonly Frets[] {
  const picked: SolvedShape[] = [];
  for (const shape of shapes) {
    const here = picked.filter((other) => placeOf(other) === placeOf(shape));
    const open = shape.frets.includes(0);
    const alike = here.filter(({ frets }) => frets.includes(0) === open);
    const [first] = alike;
    const variant =
      first !== undefined &&
      open &&
      !power &&
      shape.frets.at(-1) !== null &&
      shape.cost - first.cost <= ONE_FINGER &&
      alike.every((other) => topOf(other) !== topOf(shape));
    const fresh = first === undefined && (!open || power || here.length === 0);
    if (fresh || variant) picked.push(shape);
  }
  return picked.map(({ frets }) => frets);
}

function rank(chord: Chord): readonly Frets[] {
  const { shapes } = solveShapes(chord);
  const common = shapes.filter(isCommon);
  const playing = common.filter((shape) => playsGrooves(shape, chord));
  // A chord over a foreign bass may have no shape that serves every stroke.
  const best = [playing, common, shapes].find((some) => some.length > 0) ?? [];
  return pick(best, chord.quality === 'power');
}

const ranked = new Map<string, readonly Frets[]>();

/**
 * Playable shapes of a chord in standard tuning, the usual one first: for every place of its bass on the three low strings up
 * to the twelfth fret the shape that a player takes there, with open strings and without. The root, or the slash bass, is always
 * the lowest note and every note of the chord sounds.
 */
export function shapesFor(chord: Chord): readonly Frets[] {
  const key = `${pitchClass(chord.root)} ${chord.quality} ${chord.addition} ${bassPitchClass(chord)}`;
  const known = ranked.get(key) ?? rank(chord);
  ranked.set(key, known);
  return known;
}

/**
 * The shapes that a class plays, the usual one first: bass on string 6 or 5 and no higher than `highestFret`, and those of major
 * and minor chords on the open fourth string. Empty where the chord has none there.
 */
export function shapesInPosition(chord: Chord, highestFret: number): readonly Frets[] {
  const common = chord.quality === 'major' || chord.quality === 'minor';
  return shapesFor(chord).filter((frets) => {
    const [bass] = shapeNotes(frets);
    if (bass === undefined) return false;
    return bass.string >= 5 ? bass.fret <= highestFret : common && bass.fret === 0;
  });
}

/** The shape most players take first. */
export function usualShape(chord: Chord): Frets {
  const [usual] = shapesFor(chord);
  if (!usual) throw new RangeError(`No shape plays ${chordSymbol(chord)}.`);
  return usual;
}
