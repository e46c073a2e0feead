/** Guitars that can be heard: steel strings, nylon strings, a clean electric. */
export const VOICES = ['steel', 'nylon', 'clean'] as const;
export type Voice = (typeof VOICES)[number];

/** Lowest and highest pitch of a class, in hertz of the A above middle C. */
export const PITCH_RANGE = [415, 466] as const;

/** What the strings are and what they are heard through: everything about a note's sound but the note. */
export type Instrument = {
  readonly voice: Voice;
  /** Hertz of the A above middle C, within `PITCH_RANGE`. */
  readonly pitch: number;
  /** The speaker loses what lies under about 150 Hz: basses carry more harmonics and a clearer attack, chords less low. */
  readonly smallSpeaker: boolean;
};

export const STEEL: Instrument = { voice: 'steel', pitch: 440, smallSpeaker: false };
