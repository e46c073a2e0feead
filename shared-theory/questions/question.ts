import type { Quality } from '../chords.ts';
import type { Direction, Policy, Seventh, StrokeFeel, Truth } from '../truth.ts';
import type { Beside } from './beside.ts';
import type { BarCount, GridStroke, Role, Weight } from '../rhythm/rhythm-truth.ts';
import type { Grid } from '../groove-grid.ts';
import type { DropOutTaps, Taps } from '../taps/taps.ts';
import type { RoundQuestion } from './round-questions.ts';
import type { ErrorKind, NoteKind } from './error-kinds.ts';

/** Question kinds that stand, in the usual order of a round: rhythm first, then from the floor up to the keys. */
export const KINDS = [
  'tempo',
  'steadiness',
  'drop-out',
  'together',
  'bar-count',
  'threes',
  'half-time',
  'swing',
  'drive',
  'strokes',
  'pendulum',
  'change-place',
  'accents',
  'stroke-grid',
  'roles',
  'opened',
  'count',
  'order',
  'direction',
  'bass',
  'quality',
  'root',
  'seventh',
  'distance',
  'numeral',
  'one-or-several',
  'keys',
  'settler',
  'home',
] as const;
export type Kind = (typeof KINDS)[number];

/** Kinds whose answers are collected and shown, never marked. They have no right answer, no credit and no evidence. */
export const COLLECTED_KINDS: ReadonlySet<Kind> = new Set(['home', 'together']);

/** Kinds that ask about the groove and not about the chords. */
export const RHYTHM_KINDS: ReadonlySet<Kind> = /* @__PURE__ */ new Set(
  // Marked as free of effects: phones, which never ask for it, need not carry it.
  /* @__PURE__ */ KINDS.slice(0, /* @__PURE__ */ KINDS.indexOf('count')),
);

/** Kinds that are answered by tapping. */
export const TAPPED_KINDS: ReadonlySet<Kind> = new Set(['tempo', 'steadiness', 'drop-out', 'together']);

/** Kinds that are answered on the beat grid: to ask them tells how many slots a bar has. */
export const GRID_KINDS: ReadonlySet<Kind> = new Set(['accents', 'stroke-grid', 'roles', 'opened']);

/** Every question takes it: a respectable answer, no credit, no error. */
export const NOT_SURE = 'not-sure';
export type NotSure = typeof NOT_SURE;

/** A place on the two low strings; `string` 6 or 5, `fret` from the nut: 0 to 12, with a capo from its fret up to 15 at most. */
export type NeckPlace = { readonly string: 5 | 6; readonly fret: number };

/**
 * A key as an answer: tonic's pitch class and mode, `7M` = G major, `4m` = E minor. One name per sound: enharmonic keys are one.
 * Under the policy `modes` a home beside them: `h0` the first of the different chords, to `h3`.
 */
export type KeyId = string;

/** The sevenths that are asked about: none, the one that leans (C7, Cm7), the soft one (Cmaj7). */
export type AskedSeventh = Exclude<Seventh, 'diminished-seventh'>;

/** Answers by kind; `[]` for keys means "no key owns all". */
export type Answers = {
  /** How many different chords, 1 to 5. */
  count: number;
  /**
   * Which chord stands in each of four slots: its index among the different ones in order of their first sounding. The first is 0
   * and a new one the next number: A B A C is 0 1 0 2.
   */
  order: readonly number[];
  direction: Direction;
  /** The lowest note of a chord: of a slash chord its bass, else its root. */
  bass: NeckPlace;
  quality: Quality;
  root: NeckPlace;
  seventh: AskedSeventh;
  /**
   * Where the next chord's root lies on the distance line, in semitones from home: 1 to 12 above it, -1 to -12 below it, 0 the
   * same note. 5 is up to 4, -5 down to 5; -2 down to b7.
   */
  distance: number;
  /** Numerals of the different chords in order of their first sounding, one to four: `vi`, `V`, `bVII`, `viio`, `III+`. */
  numeral: readonly string[];
  /** Whether one key owns all chords, or several do. */
  'one-or-several': OneOrSeveral;
  keys: readonly KeyId[];
  /** The keys that still own all chords once the settler has sounded. */
  settler: readonly KeyId[];
  strokes: StrokeFeel;
  /** Taps on the numbers, along with the groove. */
  tempo: Taps;
  /** Taps on the numbers, as even as they come. */
  steadiness: Taps;
  /** Taps on the numbers, on through the silence of two bars. */
  'drop-out': DropOutTaps;
  /** The last taps on the numbers of one who claps along with the room; written again and again. */
  together: Taps;
  /** How many numbers are counted in a bar. */
  'bar-count': BarCount;
  /** Six equal slots: two threes (6/8) or three twos (3/4). */
  threes: 'two-threes' | 'three-twos';
  /** Where the bar is felt: in full time the backbeat falls on 2 and 4, in half time on 3. */
  'half-time': 'full-time' | 'half-time';
  swing: 'straight' | 'swung';
  drive: 'driving' | 'relaxed';
  /** Whether a hand that goes down on the numbers and up between could play it without ever stopping. */
  pendulum: 'keeps' | 'breaks';
  /** Where the next chord comes in: on one, or pushed, before it. */
  'change-place': 'on-one' | 'pushed';
  /** By slot of the pattern. */
  accents: readonly Weight[];
  /** By slot of the pattern; a hand that touches nothing is silent, whichever way it goes. */
  'stroke-grid': readonly GridStroke[];
  /** By slot of the pattern: which piece of a kit the stroke stands for. */
  roles: readonly Role[];
  /** Slots of the pattern, from 0, in order, at which the strings ring open; at least one. */
  opened: readonly number[];
  /** Where the student would stop: the index of a different chord in order of first sounding, 0 to 3. */
  home: number;
};
export type OneOrSeveral = 'one' | 'several';
export type AnswerOf<K extends Kind> = Answers[K];
export type Answer = Answers[Kind];

/**
 * Which chord is asked about: slot index (direction and distance: from slot 0 to it); which settler, from 0; 0 where the whole
 * loop is asked about.
 */
export type Target = number;

/** Names one question of a round: `quality-1`. Students never see it while it names something not shown. */
export type QuestionId = string;

/** Class settings a question depends on. */
export type QuestionSettings = {
  readonly policy: Policy;
  /** Qualities on the pad, in pad order. */
  readonly qualities: readonly Quality[];
  /** Fret of the class's capo, 0 to 9, by which names of shapes differ from those that sound. Default 0. */
  readonly capo?: number;
  /** Whether a chord over another bass counts as another chord. Default false. */
  readonly slashIsNew?: boolean;
};

/** What a student's pad needs, and no more: no truth, no field that depends on one. */
export type Asking = {
  readonly kind: Kind;
  readonly target: Target;
  /**
   * quality: qualities on the pad. keys and settler: the policy (`majors` and `modes` show twelve pegs, the others twenty-four);
   * settler: then the keys that own the loop without it (`7M`), once they have been shown.
   */
  readonly options?: readonly string[];
  /**
   * quality: the root as spelled (ASCII), only once the root of that chord has been shown. seventh: its triad (`Am`), only once
   * root and quality have been.
   */
  readonly letter?: string;
  /** root and bass: fret of the class's capo, 1 to 9, where there is one. */
  readonly capo?: number;
  /** direction, distance, numeral, keys: how many chords the loop has, where everyone knows it by now. */
  readonly loop?: Loop;
  /** accents, stroke-grid, roles, opened: the grid that is drawn. Asking one of them tells it. */
  readonly grid?: Grid;
};

/** How many chords a loop has, as far as everyone knows. */
export type Loop = 'one' | 'two' | 'more';

/** What may stand on a pad because it has been shown, or is known to all. */
export type Told = {
  readonly letter?: string;
  readonly loop?: Loop;
  readonly owners?: readonly KeyId[];
  readonly grid?: Grid;
};

/** What the right answer to a question depends on. */
export type AskedOf = { readonly truth: Truth; readonly target: Target; readonly settings: QuestionSettings };

/**
 * What is known of a round when a mark is made. A judge reads of `truth` the right answer to its own question and no more;
 * whatever else a mark depends on stands in `beside`, where it may not have been told yet.
 */
export type MarkingContext = AskedOf & { readonly beside: Beside; readonly own: OwnAnswers };

/** The student's own other answers in the round, by question, as far as they stand and may be told of: not-sure is none. */
export type OwnAnswers = Readonly<Record<QuestionId, Answer>>;

/**
 * The mark of one answer. `credit` 0 to 1 is the friendly ledger, `exact` the strict one; credit is 1 where exact, or where the
 * answer follows from the student's own earlier one. `errors` holds one error kind at most: the one of highest precedence.
 */
export type Mark = {
  readonly credit: number;
  readonly exact: boolean;
  readonly errors: readonly ErrorKind[];
  /** What is said beside right or wrong: no error. */
  readonly note?: NoteKind;
};

/** ask.ts of a question: spoken prompt and pad; may reach phones, imports no tonal. */
export type Ask<K extends Kind> = {
  readonly kind: K;
  /** Which targets it can be asked of, from the number of slots of the loop and of settlers. Empty: it cannot be asked. */
  readonly targets: (
    slots: number,
    round: { readonly groove: boolean; readonly settlers: number },
  ) => readonly Target[];
  readonly ask: (target: Target, settings: QuestionSettings, told: Told) => Asking;
  /** Reads what a phone sent; null where it is not an answer of this question under these settings. */
  readonly read: (value: unknown, settings: QuestionSettings) => AnswerOf<K> | null;
  /** One text per different answer, for counting: `up`, `6.5`, `2M 7M`. */
  readonly key: (answer: AnswerOf<K>) => string;
};

/** judge.ts of a question: never in the student bundle. */
export type Judge<K extends Kind> = {
  readonly kind: K;
  /** The right answer in the shape of an answer; null where it cannot be asked of this round. */
  readonly truth: (context: AskedOf) => AnswerOf<K> | null;
  /** Throws RangeError where `truth` is null. */
  readonly mark: (answer: AnswerOf<K>, context: MarkingContext) => Mark;
  /** Other answers that are as right (the same note elsewhere on the neck); often none. */
  readonly also: (context: AskedOf) => readonly AnswerOf<K>[];
  /**
   * One text per thing heard, where several answers say the same: the pitch class of a neck place. `mark`: what the answer earned, where
   * that is known: taps that show the same are told together.
   */
  readonly heard: (answer: AnswerOf<K>, mark?: Mark) => string;
  /** Chance of full credit by blind choice among the options. */
  readonly chance: (context: AskedOf) => number;
  /** The other questions whose own answers `mark` reads, out of those of the round; absent where it reads none. */
  readonly leansOn?: (target: Target, questions: readonly RoundQuestion[]) => readonly QuestionId[];
};
