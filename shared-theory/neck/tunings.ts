/** MIDI notes of the open strings 6 to 1 in standard tuning: E A D G B E. */
export const STANDARD_TUNING = [40, 45, 50, 55, 59, 64] as const;

/**
 * How an instrument is strung. `guitar` carries chords over the lowest string; `high-string` has a fourth string above its
 * third, so that no string is the bass; `bass` plays one note at a time.
 */
export type Tuning = {
  readonly kind: 'guitar' | 'high-string' | 'bass';
  /** MIDI notes of the open strings, the one nearest the player's face first. */
  readonly strings: readonly number[];
};

/** Every tuning that a class may name (common practice), the guitar's first. */
export const TUNINGS = {
  standard: { kind: 'guitar', strings: STANDARD_TUNING },
  'half-step-down': { kind: 'guitar', strings: [39, 44, 49, 54, 58, 63] },
  'whole-step-down': { kind: 'guitar', strings: [38, 43, 48, 53, 57, 62] },
  'drop-d': { kind: 'guitar', strings: [38, 45, 50, 55, 59, 64] },
  'drop-c': { kind: 'guitar', strings: [36, 43, 48, 53, 57, 62] },
  'double-drop-d': { kind: 'guitar', strings: [38, 45, 50, 55, 59, 62] },
  'open-g': { kind: 'guitar', strings: [38, 43, 50, 55, 59, 62] },
  'open-d': { kind: 'guitar', strings: [38, 45, 50, 54, 57, 62] },
  'open-e': { kind: 'guitar', strings: [40, 47, 52, 56, 59, 64] },
  dadgad: { kind: 'guitar', strings: [38, 45, 50, 55, 57, 62] },
  'seven-string': { kind: 'guitar', strings: [35, ...STANDARD_TUNING] },
  ukulele: { kind: 'high-string', strings: [67, 60, 64, 69] },
  'four-string-bass': { kind: 'bass', strings: [28, 33, 38, 43] },
  'five-string-bass': { kind: 'bass', strings: [23, 28, 33, 38, 43] },
} as const satisfies Readonly<Record<string, Tuning>>;

export type TuningId = keyof typeof TUNINGS;
