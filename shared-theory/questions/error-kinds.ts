/** What one wrong answer can show, by question; where several fit, the judge keeps the one of highest precedence. */
export const ERROR_KINDS = [
  'counts-the-changes',
  'merges-close-chords',
  'splits-one-chord',
  'hears-no-change',

  'starts-the-loop-elsewhere',
  'hears-a-return-as-new',
  'hears-a-new-chord-as-a-return',

  'follows-the-top-note',
  'right-note-other-octave',
  'answers-the-way-back',
  'says-stays',
  'says-moves',

  'names-the-root-over-a-slash',
  'fifth-over-the-bass',
  'third-over-the-bass',

  'hears-the-inversion-as-minor',
  'hears-the-major-on-top',
  'slow-or-low-is-minor',
  'fast-or-bright-is-major',
  'gives-a-mood-to-a-power-chord',
  'gives-a-mood-to-a-suspended-chord',
  'hears-diminished-as-minor',
  'lumps-diminished-and-augmented',
  'carries-the-first-quality',

  'seventh-swallowed',
  'hears-a-seventh-too-many',
  'sevenths-swapped',

  'gives-the-bass',
  'names-the-shape',
  'constant-shift',
  'swaps-relatives',
  'hears-the-fifth',
  'hears-the-fourth-above',
  'hears-the-third',
  'one-fret-off',
  'names-the-top-note',

  'measures-between-the-basses',
  'measures-from-the-key',
  'swaps-four-and-five',
  'lays-the-minor-scale',
  'measures-the-other-way',
  'starts-at-zero',
  'counts-frets-as-steps',
  'forgets-the-half-steps',

  'takes-home-for-one',
  'numeral-case-wrong',
  'flat-sign-missing',

  'relative-minors-for-majors',
  'names-one-of-the-pair',
  'finds-no-owner',
  'ignores-the-settler',
  'stops-at-one-key',
  'leaves-an-owner-out',
  'settles-too-early',
  'one-step-round-the-circle',
  'roots-fit-qualities-do-not',
  'either-chord-not-both',

  'hears-down-up-where-all-are-down',
  'hears-all-downs-where-they-alternate',

  'taps-twice-as-fast',
  'taps-half-as-fast',
  'taps-three-against-two',
  'rushes',
  'drags',
  'taps-unevenly',

  'counts-the-bar-twice',
  'counts-half-the-bar',
  'swaps-threes-and-twos',
  'swaps-full-and-half-time',
  'swaps-straight-and-swung',
  'swaps-driving-and-relaxed',
  'stops-the-pendulum',
  'keeps-the-pendulum-where-it-breaks',
  'puts-the-change-on-one',
  'hears-a-push-where-there-is-none',

  'starts-the-bar-elsewhere',
  'one-and-three-for-two-and-four',
  'ands-heavier-than-numbers',
  'all-alike',
  'foot-and-hat-swapped',
  'open-hat-missed',
  'mute-heard-as-rest',
  'loses-the-pendulum',
  'opens-one-slot-off',
] as const;

/** A kind of mishearing. On one answer it is a hint; many alike make a finding. */
export type ErrorKind = (typeof ERROR_KINDS)[number];

/** What may be said beside a mark without its being an error. */
export const NOTE_KINDS = [
  /** Numerals counted in the relative minor. */
  'other-minor-frame',
  /** Numerals counted from a home that makes a mode of the scale. */
  'counted-from-a-modal-home',
  /** A minor that owns the chords with its seventh raised, where the class does not count that. */
  'names-the-raised-seventh-minor',
  /** Numerals of another key that owns the chords than the one that is named first. */
  'right-in-another-key',
  /** Wrong by itself, right from the student's own earlier answer on: the fault was made, and counted, there. */
  'follows-own-answer',
  /** Tapped or counted at another level of the beat that is as lawful here. */
  'other-lawful-count',
  /** The teacher let it stand. */
  'also-right',
] as const;
export type NoteKind = (typeof NOTE_KINDS)[number];
