/** A chord of a reading that is played: as it travels, with its shape. */
export type SoundSlot = {
  readonly chord: string;
  readonly beats: number;
  /** Frets on the strings 6 to 1, null where a string is not played. */
  readonly frets: readonly (number | null)[];
};

/** Live controls of the sound; they take effect on the next bar line. */
export type SoundChange =
  | { readonly kind: 'full' }
  /** Full, from the first bar of the loop. */
  | { readonly kind: 'again' }
  | { readonly kind: 'hold'; readonly slot: number }
  /** The first chord and the one of `slot` by turns. */
  | { readonly kind: 'pair'; readonly slot: number }
  | { readonly kind: 'bass-alone' }
  /** The root of the chord of `slot`, long and alone. */
  | { readonly kind: 'root-alone'; readonly slot: number }
  /** The groove on muted strings: no chord to hear. */
  | { readonly kind: 'muted' }
  | { readonly kind: 'soft' }
  /** The loop with one of its settlers behind it. */
  | { readonly kind: 'settler'; readonly index: number }
  /** Two readings of a question by turns, in the groove: first what was wrongly heard, then what sounds. */
  | {
      readonly kind: 'both';
      readonly ask: string;
      readonly wrong: readonly SoundSlot[];
      readonly right: readonly SoundSlot[];
    }
  /** Nothing, while the groove goes on unheard. */
  | { readonly kind: 'silence' }
  /** The chord's bass stands out of the groove. */
  | { readonly kind: 'bass-forward' }
  /** The groove on the kit alone. */
  | { readonly kind: 'kit-only' }
  /** The chord of `slot`, struck once a bar and left to ring. */
  | { readonly kind: 'chord-alone'; readonly slot: number }
  /** The root of the chord of `slot` for a bar, then the chord for a bar. */
  | { readonly kind: 'root-then-chord'; readonly slot: number }
  /** Two bars unheard; then the loop is back, where it would have come. */
  | {
      readonly kind: 'drop-out';
      /** Bars still heard before it, 0 to 4; 0 where absent. */
      readonly after?: number;
    }
  /** A grid that was drawn, struck on muted strings in the running tempo: a groove in one line of the grid language. */
  | { readonly kind: 'echo'; readonly groove: string }
  | BesideChange;

/** Most bars that are still heard before the loop drops out. */
export const MOST_BARS_BEFORE_DROP_OUT = 4;

/** What sounds of the loop. */
export type ModeChange = Exclude<SoundChange, BesideChange>;

/** What changes beside what sounds of the loop, and stays when that changes. */
export type BesideChange =
  | { readonly kind: 'tempo'; readonly tempo: number }
  /** A little faster each time round, up to a tempo; each step is told as a change of tempo. */
  | { readonly kind: 'climb'; readonly to: number }
  /** The groove as it was written, or its meter's driving or relaxed groove in its place. */
  | { readonly kind: 'feel'; readonly feel: Feel }
  /** Who plays along with the guitar. */
  | ({ readonly kind: 'band' } & Band);

/** Whether a change goes on beside what sounds of the loop. */
export function isBeside(change: SoundChange): change is BesideChange {
  const { kind } = change;
  return kind === 'tempo' || kind === 'climb' || kind === 'feel' || kind === 'band';
}

export const FEELS = ['written', 'driving', 'relaxed'] as const;
export type Feel = (typeof FEELS)[number];

/** Who plays along with the guitar. */
export type Band = { readonly kit: boolean; readonly bass: boolean };

/** A tone beside the vamp, for tuning and for judging the speaker. */
export type Tone =
  /** The A of the class's pitch. */
  | { readonly kind: 'reference' }
  /** An open string, 1 (high E) to 6. */
  | { readonly kind: 'string'; readonly string: number }
  /** The low E as it is, then without its fundamental: a speaker on which both sound alike has no bass. */
  | { readonly kind: 'bass-check' };

/** What the server tells the page that holds the sound. */
export type SoundOrder =
  | { readonly order: 'play'; readonly round: string }
  | { readonly order: 'change'; readonly round: string; readonly change: SoundChange }
  | { readonly order: 'stop' }
  | { readonly order: 'tone'; readonly tone: Tone };
