import type { GuitarCrib } from '../../shared-theory/crib/typed.ts';
import { cribWords } from '../protocol/words/crib-words.ts';
import { boxRows, LEAST_FRETS } from './box.ts';
import { changesOf, noKeyTexts, otherPolicies, visitedTexts } from './keys-part.ts';
import type { SheetNames } from './names.ts';
import { policySentence } from '../protocol/words/policy-sentences.ts';
import { settlingRows } from './settling.ts';
import type { Slip, SlipGroup } from './slips.ts';
import { MOST_OF_A_KIND, slipGroups } from './slips.ts';

/** How large a sheet is set; sizes in points as the style sheet has them. */
export type Density = 'loose' | 'easy' | 'usual' | 'close' | 'tight' | 'small' | 'least';
const SIZES: Readonly<Record<Density, number>> = {
  loose: 9.2,
  easy: 8.8,
  usual: 8.4,
  close: 8,
  tight: 7.7,
  small: 7.2,
  least: 6.8,
};

/** Points between the margins of a letter page, the shorter of the two papers. */
const PAGE = 728;
/** Head, and the rules between the parts. */
const FURNITURE = 64;
/** A chord's name and its box; each fret more than a box has at least; the name of a shape under a capo; a row holds so many. */
const SHAPES = 72;
const FRET = 9.6;
const SHAPE_NAME = 11;
const SHAPES_IN_A_ROW = 5;
/** Beside the shapes there is room for so many keys in a line, or so many notes. */
const MOST_KEYS = 2;
const NOTES_IN_A_ROW = 6;
const LEADING = 1.24;
/** Parts of a column's line that the left text, and two columns of the table of settlers, have. */
const LEFT = 0.9;
const LEAVES_COLUMN = 0.42;
const CHORDS_COLUMN = 0.34;
/** Letters in a line of one of the two columns, at one point. */
const LETTERS = 575;
/** Lines more than are counted: words that do not fit break a line early. */
const SPARE = 2;

/** Most slips of a kind and how large to set them, best first. */
const CHOICES: readonly (readonly [most: number, density: Density])[] = [
  [MOST_OF_A_KIND, 'loose'],
  [MOST_OF_A_KIND, 'easy'],
  [MOST_OF_A_KIND, 'usual'],
  [MOST_OF_A_KIND, 'close'],
  [MOST_OF_A_KIND, 'tight'],
  [2, 'usual'],
  [2, 'close'],
  [2, 'tight'],
  [1, 'close'],
  [1, 'tight'],
  // Bare fifths, which a dozen keys own.
  [1, 'small'],
  [1, 'least'],
];

/** The answers of a sheet with as many slips of each kind, as large as they can be set, for all to stay on one page. */
export function fittedGroups(
  crib: GuitarCrib,
  names: SheetNames,
): { readonly groups: readonly SlipGroup[]; readonly density: Density } {
  const last = CHOICES.length - 1;
  for (const [place, [most, density]] of CHOICES.entries()) {
    const groups = slipGroups(crib, names, most);
    if (place === last || heightOf(crib, names, groups, SIZES[density]) <= PAGE) return { groups, density };
  }
  throw new RangeError('A sheet has at least one way to be set.');
}

/** Estimated height of a sheet in points. */
function heightOf(crib: GuitarCrib, names: SheetNames, groups: readonly SlipGroup[], size: number): number {
  const letters = LETTERS / size;
  const lines =
    answerLines(groups, letters) + SPARE + Math.max(keyLines(crib, names, letters), settlingLines(crib, letters));
  return FURNITURE + playHeight(crib) + lines * size * LEADING;
}

/** Lines that a text takes, of so many letters each. */
function linesOf(text: string, letters: number): number {
  return Math.ceil(text.length / letters);
}

/** Lines of the longer of the two columns where they are as even as they can be: no group is cut in two. */
function answerLines(groups: readonly SlipGroup[], letters: number): number {
  const lines = groups.map((group) => groupLines(group, letters));
  const sum = (some: readonly number[]) => some.reduce((all, each) => all + each, 0);
  return Math.min(...lines.map((_, place) => Math.max(sum(lines.slice(0, place + 1)), sum(lines.slice(place + 1)))));
}

function groupLines({ right, slips }: SlipGroup, letters: number): number {
  const ofSlip = ({ answers, finding, say, play }: Slip) =>
    linesOf(`${answers} ${finding}`, letters) + linesOf(say ?? '', letters) + linesOf(play ?? '', letters);
  return 0.4 + linesOf(`${right} `, letters - 8) + slips.reduce((sum, slip) => sum + ofSlip(slip), 0);
}

/** The left one of the parts in the middle: numerals by key and what other policies say. */
function keyLines(crib: GuitarCrib, names: SheetNames, letters: number): number {
  const sentences = [
    ...(crib.keys.length === 0 ? noKeyTexts(crib, names) : []),
    ...visitedTexts(crib, names),
    ...changesOf(crib).map((change) => policySentence(change, names)),
    `${cribWords.otherPolicies} ${otherPolicies(crib, names).join(' · ')}`,
  ];
  const width = letters * LEFT;
  return 2.6 + crib.keys.length * 1.2 + sentences.reduce((sum, text) => sum + 0.3 + linesOf(text, width), 0);
}

/** The right one: what settles it, in a table of three columns. */
function settlingLines(crib: GuitarCrib, letters: number): number {
  const rows = settlingRows(crib).map(({ leaves, chords, chordPair }) =>
    Math.max(
      linesOf(leaves.join(' and '), letters * LEAVES_COLUMN),
      linesOf([...chords.slice(0, 6), ...chordPair].join(', '), letters * CHORDS_COLUMN),
      1,
    ),
  );
  return 3.4 + rows.reduce((sum, lines) => sum + lines + 0.15, 0);
}

/** Shapes in rows, or the deciding notes beside them. */
function playHeight({ shapes, deciders, guitar }: GuitarCrib): number {
  const more = Math.max(0, ...shapes.map(({ frets }) => (frets === null ? 0 : boxRows(frets).rows - LEAST_FRETS)));
  const row = SHAPES + FRET * more + (guitar.capo === 0 ? 0 : SHAPE_NAME);
  const notes = standInARow(deciders) ? Math.ceil(deciders.length / NOTES_IN_A_ROW) : deciders.length;
  return Math.max(row * Math.ceil(shapes.length / SHAPES_IN_A_ROW), 46 + notes * 17);
}

/** Whether deciding notes stand without their keys, as those are many and stand in the table alone. */
export function standInARow(deciders: GuitarCrib['deciders']): boolean {
  return deciders.some(({ leaves }) => leaves.length > MOST_KEYS);
}
