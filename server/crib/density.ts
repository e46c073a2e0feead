import type { GuitarCrib } from '../../shared-theory/crib/typed.ts';
import type { SheetNames } from './names.ts';
import { settlingRows } from './settling.ts';
import type { Slip, SlipGroup } from './slips.ts';
import { MOST_OF_A_KIND, slipGroups } from './slips.ts';

/** How large a sheet is set; sizes in points as the style sheet has them. */
export type Density = 'loose' | 'usual' | 'tight';
const SIZES: Readonly<Record<Density, number>> = { loose: 9.2, usual: 8.4, tight: 7.7 };

/** Points between the margins of a letter page, the shorter of the two papers. */
const PAGE = 735;
/** Head, and the rules between the parts. */
const FURNITURE = 100;
const SHAPES = 96;
const SHAPES_IN_A_ROW = 6;
/** Letters in a line of one of the two columns, at one point. */
const LETTERS = 560;
/** Lines by which one column may run longer than the other: a group is never cut in two. */
const UNEVEN = 6;

/** Most slips of a kind and how large to set them, best first. */
const CHOICES: readonly (readonly [most: number, density: Density])[] = [
  [MOST_OF_A_KIND, 'loose'],
  [MOST_OF_A_KIND, 'usual'],
  [MOST_OF_A_KIND, 'tight'],
  [2, 'usual'],
  [2, 'tight'],
  [1, 'tight'],
];

/** The answers of a sheet with as many slips of each kind, as large as they can be set, for all to stay on one page. */
export function fittedGroups(
  crib: GuitarCrib,
  names: SheetNames,
): { readonly groups: readonly SlipGroup[]; readonly density: Density } {
  const last = CHOICES.length - 1;
  for (const [place, [most, density]] of CHOICES.entries()) {
    const groups = slipGroups(crib, names, most);
    if (place === last || heightOf(crib, groups, SIZES[density]) <= PAGE) return { groups, density };
  }
  throw new RangeError('A sheet has at least one way to be set.');
}

/** Estimated height of a sheet in points. */
function heightOf(crib: GuitarCrib, groups: readonly SlipGroup[], size: number): number {
  const line = size * 1.24;
  const letters = LETTERS / size;
  const lines = (text: string) => Math.ceil(text.length / letters);
  const ofSlip = ({ answers, finding, say, play }: Slip) =>
    lines(`${answers} ${finding}`) + lines(say ?? '') + lines(play ?? '');
  const answers = groups.reduce(
    (sum, { right, slips }) => sum + 1.4 + lines(right) - 1 + slips.reduce((each, slip) => each + ofSlip(slip), 0),
    0,
  );
  const keys = Math.max(crib.keys.length * 1.3 + 4, settlingRows(crib).length * 1.4 + 4);
  const shapes = SHAPES * Math.ceil(crib.shapes.length / SHAPES_IN_A_ROW);
  return FURNITURE + shapes + (keys + answers / 2 + UNEVEN) * line;
}
