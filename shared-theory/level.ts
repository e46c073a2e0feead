import type { Quality } from './chords.ts';
import type { Key } from './keys.ts';
import type { Kind } from './questions/question.ts';
import type { Distance } from './distance-line.ts';
import type { Seventh } from './truth.ts';

/** Lowest and highest share, 0 to 1. */
export type ShareRange = readonly [number, number];

/**
 * How a loop goes: one chord; two in turn; three, the last twice as long; A B A C, where home comes between; A B C B, there and
 * back; four different ones; twelve bars.
 */
export const FORMS = ['held', 'pair', 'turn', 'return', 'back', 'round', 'twelve'] as const;
export type Form = (typeof FORMS)[number];
/** Share of each form, none where it is not named; together 1. */
export type FormShares = Readonly<Partial<Record<Form, number>>>;

/** How the vamps of a level fall out in the long run, as shares. */
export type Balance = {
  readonly forms: FormShares;
  /** The same where it is asked how many chords there are: then no number of them takes more than four vamps in ten. */
  readonly counting: { readonly forms: FormShares; readonly stays: number };
  /** Of the changes from home: the bass stays. Up and down share the rest evenly. */
  readonly stays: number;
  /** Of the changes from home, by distance number; a distance not named goes free up to a quarter. */
  readonly distances: Readonly<Partial<Record<Distance, ShareRange>>>;
  /** Chords in a slot that are power chords; the others are major and minor by halves. */
  readonly power: number;
  /** Chords in a slot by quality, where others than these stand among them or a form cannot keep to halves. */
  readonly qualities?: Readonly<Partial<Record<Form, Readonly<Partial<Record<Quality, ShareRange>>>>>>;
  /** Home by quality, where it falls otherwise than the chords after it. */
  readonly home?: Readonly<Partial<Record<Quality, ShareRange>>>;
  /** Chords in a slot by their seventh, where it is asked. */
  readonly sevenths?: Readonly<Partial<Record<Form, Readonly<Partial<Record<Seventh, ShareRange>>>>>>;
  /** Chords over another bass than their root: as home, and in each slot after it; and most vamps that hold a minor one so. */
  readonly offRoot?: { readonly home: ShareRange; readonly later: ShareRange; readonly minor: number };
  /** Vamps of a form that exactly one major key owns; a form not named falls as it may. */
  readonly oneKey: Readonly<Partial<Record<Form, number>>>;
  /** Vamps of a form that no major key owns; a form not named falls as it may. */
  readonly noKey?: Readonly<Partial<Record<Form, number>>>;
  /** Vamps of a form as the levels before know them, beside what the level adds; a form not named falls as it may. */
  readonly familiar?: Readonly<Partial<Record<Form, number>>>;
  /** No set of owning keys is more usual; absent where it may fall as it does. */
  readonly owners?: number;
};

export const LEVELS_THAT_STAND = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12] as const;
type LevelNumber = (typeof LEVELS_THAT_STAND)[number];

/** A step of the ladder: what sounds and what is asked. */
export type Level = {
  readonly level: LevelNumber;
  readonly name: string;
  /** Keys whose triads are used. */
  readonly keys: readonly Key[];
  /** Groove ids; as many draws go to those in downstrokes alone as to those that go down and up; fingers and others now and then. */
  readonly grooves: readonly string[];
  /** Slowest and fastest, beats a minute, where the level is narrower than its grooves; null where they alone decide. */
  readonly tempo: readonly [number, number] | null;
  readonly barsPerChord: 1 | 2;
  /** Chords open with their groove's opening bar, where it has one, so that their quality is heard. */
  readonly opening: boolean;
  /** Shapes with open strings alone. */
  readonly openShapes: boolean;
  /** Barres go no higher than this fret. */
  readonly highestFret: number;
  /** The bass moves no further than so many semitones: from home, or from the chord before where shapes lead on. */
  readonly largestMove: number;
  /** Each chord takes the shape nearest to the one before; else any that home reaches, so that the bass goes both ways. */
  readonly leadsOn: boolean;
  /** Qualities on the pad. */
  readonly qualities: readonly Quality[];
  /** Kinds asked, in the order of a round. */
  readonly questions: readonly Kind[];
  /** Tempos are drawn within the groove's range in steps of so many beats a minute. */
  readonly tempoStep: number;
  readonly balance: Balance;
};
