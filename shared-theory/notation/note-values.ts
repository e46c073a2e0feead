import type { Meter } from '../vamps.ts';

/** Divisions of a quarter note: eighths, sixteenths and triplets of them are whole numbers. */
export const DIVISIONS = 12;

/** A note value as MusicXML names it, and its length in divisions. */
export type NoteValue = { readonly type: string; readonly dots: 0 | 1; readonly length: number };

const plain = (type: string, length: number): NoteValue => ({ type, dots: 0, length });
const dotted = (type: string, length: number): NoteValue => ({ type, dots: 1, length });

const SIXTEENTH = plain('16th', 3);
const EIGHTH = plain('eighth', 6);
const DOTTED_EIGHTH = dotted('eighth', 9);
const QUARTER = plain('quarter', 12);
const DOTTED_QUARTER = dotted('quarter', 18);
const HALF = plain('half', 24);
const DOTTED_HALF = dotted('half', 36);
const WHOLE = plain('whole', 48);
const DOTTED_WHOLE = dotted('whole', 72);

/** A value and the places in the bar, in divisions, where it may begin: `every` so many, at `at` in each. */
type Rule = {
  readonly value: NoteValue;
  readonly every: number;
  readonly at: readonly number[];
  readonly rest: boolean;
};

const rule = (value: NoteValue, every: number, at: readonly number[], rest = true): Rule => ({
  value,
  every,
  at,
  rest,
});

/** Longest first. A rest never hides a beat: syncopations are for notes alone. */
const SIMPLE: readonly Rule[] = [
  rule(QUARTER, 24, [0, 12]),
  rule(QUARTER, 24, [6], false),
  rule(DOTTED_EIGHTH, 12, [0, 3], false),
  rule(EIGHTH, 6, [0]),
  rule(EIGHTH, 12, [3], false),
  rule(SIXTEENTH, 3, [0]),
];
const FOUR: readonly Rule[] = [
  rule(WHOLE, 48, [0]),
  rule(DOTTED_HALF, 48, [0], false),
  rule(HALF, 24, [0]),
  rule(DOTTED_QUARTER, 24, [0, 6], false),
  ...SIMPLE,
];
const COMPOUND: readonly Rule[] = [
  rule(DOTTED_WHOLE, 72, [0]),
  rule(DOTTED_HALF, 36, [0]),
  rule(DOTTED_QUARTER, 18, [0]),
  rule(QUARTER, 18, [0, 6], false),
  rule(EIGHTH, 6, [0]),
  rule(SIXTEENTH, 3, [0]),
];
const RULES: Readonly<Record<Meter, readonly Rule[]>> = {
  '4/4': FOUR,
  '3/4': [rule(DOTTED_HALF, 36, [0]), rule(HALF, 36, [0, 12]), rule(DOTTED_QUARTER, 12, [0], false), ...SIMPLE],
  '6/8': COMPOUND,
  '12/8': COMPOUND,
  // Two, two and three.
  '7/8': [
    rule(HALF, 42, [0], false),
    rule(DOTTED_QUARTER, 42, [24]),
    rule(QUARTER, 42, [0, 12]),
    rule(QUARTER, 42, [24, 30], false),
    rule(EIGHTH, 6, [0]),
    rule(SIXTEENTH, 3, [0]),
  ],
};

/** Where the groups of a bar begin whose notes share a beam, in divisions. */
export function beamGroup(meter: Meter, at: number): number {
  if (meter === '7/8') return at < 12 ? 0 : at < 24 ? 1 : 2;
  return Math.floor(at / (meter === '6/8' || meter === '12/8' ? 18 : 12));
}

/** The longest value of at most `most` divisions that can be read at a place of the bar. RangeError where it is no sixteenth. */
export function valueAt(meter: Meter, at: number, most: number, rest: boolean): NoteValue {
  const found = RULES[meter].find(
    ({ value, every, at: places, rest: rests }) =>
      value.length <= most && places.includes(at % every) && (rests || !rest),
  );
  if (!found) throw new RangeError(`No note value of at most ${most} divisions begins ${at} divisions into ${meter}.`);
  return found.value;
}

/** Values that fill `length` divisions from a place of the bar on, with rests or with notes tied to each other. */
export function valuesAt(meter: Meter, at: number, length: number, rest: boolean): readonly NoteValue[] {
  if (length <= 0) return [];
  const value = valueAt(meter, at, length, rest);
  return [value, ...valuesAt(meter, at + value.length, length - value.length, rest)];
}
