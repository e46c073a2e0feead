import type { Frets } from '../vamps.ts';
import { FINGERS, frettedRange, type Finger } from './hand.ts';

const BARRE_STRING = 0.35;
/** A barre of so many strings ends beside an open string only with a bent finger. */
const WIDE_BARRE = 4;
const BENT_BARRE = 2;
/** A barre over so many strings asks most of the hand on the first fret, beside the nut. */
const FULL_BARRE = 6;
const BARRE_AT_NUT = 0.6;
/** A finger that is not the index lies flat over three strings; over four it takes the whole hand. */
const FLAT_STRINGS = 3;
const FLATTER = 2.2;
/** Beside a flat index a lower string of its fret takes another finger, pushed in at its tip. */
const BESIDE_FLAT_INDEX = 2.5;
/** So many fretted strings need no flat finger. */
const EASY_FINGERS = 3;
/** Two fingers on the lowest fret so many strings apart, an open string and a higher finger between them, twist the hand. */
const APART = 4;
const TWISTED = 2;
/** Above a flat finger an open string rings only where it arches, or where another finger takes its place. */
const ARCHED_FLAT = 0.45;
/** Beside the index, one finger lies flat; a second one does not. */
const SECOND_FLAT_FINGER = 3;

/** Each fret of the highest finger from the nut. */
const POSITION_FRET = 0.45;
/** By the frets between the lowest and the highest fretted string. */
const SPAN = [0, 0, 0.3, 2.3] as const;

/** An open string beside fingers beyond this fret rings out of the shape. */
const NUT_FRETS = 4;
const FAR_OPEN = 2;

function barreCost(frets: Frets, { fret, from, to }: Finger, lowest: number): number {
  const strings = to - from + 1;
  const wide = strings >= WIDE_BARRE;
  const bent = wide && frets.some((other, string) => string > to && other === 0);
  return (
    BARRE_STRING * (strings - 1) +
    (bent ? BENT_BARRE : 0) +
    (strings >= FULL_BARRE && fret === 1 ? BARRE_AT_NUT : 0) +
    (fret > lowest && strings > FLAT_STRINGS ? FLATTER : 0) +
    (fret > lowest && frets.includes(0, to + 1) ? ARCHED_FLAT * (strings - 1) : 0)
  );
}

/** What fingers on the lowest fret cost that a flat index, or a higher finger between them, keeps apart. */
function lowestFretCost(frets: Frets, fingers: readonly Finger[], lowest: number): number {
  const there = fingers.filter(({ fret }) => fret === lowest);
  const [low] = there;
  const high = there.at(-1);
  if (low === undefined || high === undefined || low === high) return 0;
  const between = frets.slice(low.to + 1, high.from);
  const open = between.includes(0);
  const fretted = frets.filter((fret) => fret !== null && fret > 0).length;
  const flat =
    fretted > EASY_FINGERS &&
    there.some(
      ({ from, to }) => from > low.to && to > from && (frets[from + 1] === lowest || (open && fretted > FINGERS)),
    );
  const twisted = open && high.from - low.to >= APART && between.some((fret) => fret !== null && fret > lowest);
  return (flat ? BESIDE_FLAT_INDEX : 0) + (twisted ? TWISTED : 0);
}

/** What a shape asks of the hand, in fingers: those that hold it, barres, the place on the neck, the stretch. */
export function handCost(frets: Frets, fingers: readonly Finger[]): number {
  const [lowest, highest] = frettedRange(frets) ?? [1, 1];
  const flat = fingers.filter(({ fret, from, to }) => fret > lowest && to > from).length;
  const first = frets.findIndex((fret) => fret !== null);
  // The bass finger alone goes a fret further.
  const furthest = Math.max(0, ...frets.map((fret, string) => (string === first ? (fret ?? 0) - 1 : (fret ?? 0))));
  const far = furthest > NUT_FRETS ? frets.filter((fret) => fret === 0).length : 0;
  return (
    fingers.reduce((sum, finger) => sum + 1 + barreCost(frets, finger, lowest), 0) +
    SECOND_FLAT_FINGER * Math.max(0, flat - 1) +
    lowestFretCost(frets, fingers, lowest) +
    POSITION_FRET * (highest - 1) +
    (SPAN[highest - lowest] ?? Infinity) +
    FAR_OPEN * far
  );
}
