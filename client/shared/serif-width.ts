/** Widths of the letters of Besley 600 in em, in groups; measured on the face. All others are about as wide as `other`. */
const WIDTHS: readonly (readonly [letters: string, width: number])[] = [
  [' .,:;’!|', 0.29],
  ['ijl', 0.35],
  ['tfI', 0.42],
  ['rszce?1', 0.55],
  ['oavxgy', 0.61],
  ['kqbdphunS', 0.68],
  ['PLFZBETY', 0.77],
  ['CRDOQUX♯', 0.85],
  ['wmAGVKNH', 0.91],
  ['MW', 1.15],
];
const OTHER = 0.6;
/** The serif is set a little closer than it was cut. */
const TRACKING = -0.014;

/** About how wide a text in the serif is at a size, in the unit of the size: for where it breaks, and for rules under it. */
export function serifWidth(text: string, size: number): number {
  const width = (letter: string): number => WIDTHS.find(([letters]) => letters.includes(letter))?.[1] ?? OTHER;
  return Array.from(text).reduce((sum, letter) => sum + width(letter) + TRACKING, 0) * size;
}
