import type { Frets } from '../vamps.ts';

/** Frets between the lowest and the highest fretted string that a hand reaches: four frets in all. */
export const REACH = 3;

/** Fingers that press strings; the thumb stays behind the neck. */
export const FINGERS = 4;

/** A finger that is not the index lies across so many strings at most. */
const WIDEST_HIGH_BARRE = 4;

/** One finger on one fret: the strings from `from` to `to`, counted from 0 at the lowest; more than one are a barre. */
export type Finger = { readonly fret: number; readonly from: number; readonly to: number };

/** Lowest and highest fretted fret; null where every string is open or left out. */
export function frettedRange(frets: Frets): readonly [number, number] | null {
  let lowest = Infinity;
  let highest = 0;
  for (const fret of frets) {
    if (fret === null || fret === 0) continue;
    if (fret < lowest) lowest = fret;
    if (fret > highest) highest = fret;
  }
  return highest === 0 ? null : [lowest, highest];
}

/** The fingers on one fret of a shape, from the lowest string. */
function pressing(frets: Frets, fret: number, widest: number, fingers: Finger[]): void {
  let from = -1;
  let to = -1;
  for (let string = 0; string < frets.length; string += 1) {
    const at = frets[string] ?? -1;
    const ends = at < fret || (at === fret && string - from >= widest);
    if (from >= 0 && ends) {
      fingers.push({ fret, from, to });
      from = -1;
    }
    if (at !== fret) continue;
    if (from < 0) from = string;
    to = string;
  }
  if (from >= 0) fingers.push({ fret, from, to });
}

/** Whether a string above `to`, nearer the floor, sounds lower than `fret`: a finger lying flat there would press it. */
function overLower(frets: Frets, { fret, to }: Finger): boolean {
  return frets.some((other, string) => string > to && other !== null && other < fret);
}

/**
 * Whether four fingers hold a shape. The index lies across the lowest fret; another finger lies flat only where nothing beside
 * its base is lower, else each of its strings takes a finger.
 */
export function canHold(frets: Frets, fingers: readonly Finger[]): boolean {
  const [lowest] = frettedRange(frets) ?? [0];
  let needed = 0;
  for (const finger of fingers) {
    const { fret, from, to } = finger;
    if (to === from || fret === lowest || !overLower(frets, finger)) needed += 1;
    else for (let string = from; string <= to; string += 1) if (frets[string] === fret) needed += 1;
  }
  return needed <= FINGERS;
}

/**
 * The fingers that hold a shape, as few as can be. A finger holds several strings of one fret where every string between
 * them is fretted there or higher: it would stop an open string, raise one fretted lower, and press one that is left out.
 */
export function fingersOf(frets: Frets): readonly Finger[] {
  const [lowest, highest] = frettedRange(frets) ?? [1, 0];
  const fingers: Finger[] = [];
  for (let fret = lowest; fret <= highest; fret += 1)
    pressing(frets, fret, fret > lowest ? WIDEST_HIGH_BARRE : frets.length, fingers);
  return fingers;
}
