/** A pitch class: an integer 0 (C) to 11 (B). */
export type PitchClass = number;

/** A spelled note without octave, accidentals in ASCII: `C`, `F#`, `Bb`, `F##`. */
export type NoteName = string;
