import type { ErrorKind } from './questions/error-kinds.ts';
import type { Kind } from './questions/question.ts';

/** What a vamp, or the chord that was asked about, is like where a level asks for such cases. */
const TRAITS = [
  /** Two chords in turn. */
  'two-chords',
  /** The top note stays or goes the other way than the bass. */
  'top-against-bass',
  /** One key alone owns the loop. */
  'one-key',
  /** No key owns the loop. */
  'no-key',
  /** The settler leaves every key in. */
  'settles-nothing',
  /** Four slots of three or four different chords. */
  'four-slots',
  /** The chord stands over another bass than its root. */
  'off-root',
  /** The chord is borrowed, or applied to another one. */
  'visitor',
] as const;
export type Trait = (typeof TRAITS)[number];

/**
 * What must have been shown lately. A trial is one answer; or what was answered of one chord, or of one vamp, to several kinds,
 * which is right where all of it is.
 */
export type Condition = {
  readonly kinds: readonly Kind[];
  readonly each: 'answer' | 'chord' | 'vamp';
  /** The last so many trials count. */
  readonly outOf: number;
  /** So many of them are right; or their credits (0 to 1) have such a mean. */
  readonly needs: { readonly right: number } | { readonly meanCredit: number };
  /** An answer counts as right from this credit on; default where it is exact. */
  readonly fromCredit?: number;
  /** Trials of other vamps and chords do not count. */
  readonly among?: Trait;
  /** So many of the trials that count have this trait; with `right` so many that are right. */
  readonly cases?: { readonly trait: Trait; readonly least: number; readonly right: boolean };
  /** Each of these answers was the right one so often, and was missed so often at most: always saying one proves nothing. */
  readonly sides?: { readonly answers: readonly string[]; readonly least: number; readonly mostWrong: number };
  /** All this holds on so many different days. */
  readonly days?: number;
  /** So many of the answers that count, at most, show one of these errors. */
  readonly errors?: { readonly kinds: readonly ErrorKind[]; readonly most: number };
};

/**
 * When a level is mastered, for every level: all its conditions hold. The numbers are starting values, set against chance: eight of
 * ten on a two-way question come by luck in 5.5 % of cases, nine of ten in 1.1 %, eight of ten on a three-way one in 0.3 %. Where a
 * loop would stop is an opinion: it masters nothing.
 */
export const MASTERY_RULES: Readonly<Record<number, readonly Condition[]>> = {
  1: [{ kinds: ['count'], each: 'answer', outOf: 10, needs: { right: 9 } }],
  2: [
    {
      kinds: ['direction'],
      each: 'answer',
      outOf: 10,
      needs: { right: 9 },
      cases: { trait: 'top-against-bass', least: 4, right: false },
    },
  ],
  3: [
    {
      kinds: ['quality'],
      each: 'answer',
      outOf: 10,
      needs: { right: 9 },
      among: 'two-chords',
      sides: { answers: ['major', 'minor'], least: 3, mostWrong: 1 },
    },
  ],
  4: [
    { kinds: ['root'], each: 'answer', outOf: 5, needs: { right: 4 }, days: 2 },
    // Fewer than one in ten a fifth off.
    {
      kinds: ['root'],
      each: 'answer',
      outOf: 10,
      needs: { right: 8 },
      errors: { kinds: ['hears-the-fifth', 'hears-the-fourth-above'], most: 0 },
    },
  ],
  5: [
    {
      kinds: ['distance'],
      each: 'answer',
      outOf: 10,
      needs: { right: 8 },
      errors: { kinds: ['swaps-four-and-five'], most: 1 },
    },
  ],
  6: [
    {
      kinds: ['direction', 'quality', 'root', 'distance', 'numeral'],
      each: 'vamp',
      outOf: 6,
      needs: { right: 5 },
      errors: { kinds: ['numeral-case-wrong'], most: 0 },
    },
  ],
  7: [
    {
      kinds: ['keys'],
      each: 'answer',
      outOf: 8,
      needs: { meanCredit: 0.85 },
      cases: { trait: 'one-key', least: 3, right: false },
    },
  ],
  8: [
    {
      kinds: ['settler'],
      each: 'answer',
      outOf: 6,
      needs: { right: 5 },
      cases: { trait: 'settles-nothing', least: 2, right: true },
    },
  ],
  9: [
    // Three chords of four.
    { kinds: ['numeral'], each: 'answer', outOf: 6, needs: { right: 5 }, fromCredit: 0.75, among: 'four-slots' },
    { kinds: ['order'], each: 'answer', outOf: 6, needs: { right: 5 } },
  ],
  10: [
    { kinds: ['quality'], each: 'answer', outOf: 10, needs: { right: 9 } },
    {
      kinds: ['seventh'],
      each: 'answer',
      outOf: 10,
      needs: { right: 7 },
      sides: { answers: ['none', 'seventh', 'major-seventh'], least: 2, mostWrong: 2 },
    },
  ],
  11: [{ kinds: ['bass', 'root'], each: 'chord', outOf: 5, needs: { right: 4 }, among: 'off-root' }],
  12: [
    {
      kinds: ['keys'],
      each: 'answer',
      outOf: 6,
      needs: { right: 5 },
      cases: { trait: 'no-key', least: 2, right: true },
    },
    { kinds: ['distance', 'quality'], each: 'chord', outOf: 6, needs: { right: 4 }, among: 'visitor' },
  ],
};
