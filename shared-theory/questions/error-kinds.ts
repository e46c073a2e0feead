/** What one wrong answer can show, by question; where several fit, the judge keeps the one of highest precedence. */
export const ERROR_KINDS = [
  'follows-the-top-note',
  'says-stays',
  'says-moves',

  'slow-or-low-is-minor',
  'fast-or-bright-is-major',
  'gives-a-mood-to-a-power-chord',
  'gives-a-mood-to-a-suspended-chord',
  'hears-diminished-as-minor',
  'lumps-diminished-and-augmented',
  'carries-the-first-quality',

  'hears-the-fifth',
  'hears-the-fourth-above',
  'hears-the-third',
  'one-fret-off',
  'names-the-top-note',

  'relative-minors-for-majors',
  'names-one-of-the-pair',
  'finds-no-owner',
  'stops-at-one-key',
  'leaves-an-owner-out',
  'one-step-round-the-circle',
  'roots-fit-qualities-do-not',
  'either-chord-not-both',

  'hears-down-up-where-all-are-down',
  'hears-all-downs-where-they-alternate',
] as const;

/** A kind of mishearing. On one answer it is a hint; many alike make a finding. */
export type ErrorKind = (typeof ERROR_KINDS)[number];
