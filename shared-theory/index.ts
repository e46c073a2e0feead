export {
  chordNotes,
  chordPitchClasses,
  chordSymbol,
  parseChord,
  qualitySemitones,
  qualitySuffix,
  QUALITIES,
} from './chords.ts';
export type { Chord, Quality } from './chords.ts';
export { chartRows, cribOf } from './crib.ts';
export type { ChartRows, Crib, Decider, Settler } from './crib.ts';
export {
  candidateKeys,
  diatonicChart,
  keyId,
  keyName,
  numeralIn,
  parseKeyName,
  relativeKey,
  usualKey,
} from './keys.ts';
export type { CandidateKey, Diatonic, Key } from './keys.ts';
export { midiFrequency, midiPitchClass, pitchClass, transpose } from './pitch.ts';
export type { Interval, NoteName, PitchClass } from './pitch.ts';
export { printChord, printDistance, printKey, printNote, printNumeral } from './printer.ts';
export type { Naming, Printed, PrintedDegree } from './printer.ts';
export { POLICIES } from './truth.ts';
export type { Direction, Distance, Policy, StrokeFeel, Truth } from './truth.ts';
export { parseVamp, ReadingError } from './vamps.ts';
export type { Frets, Meter, Slot, VoicedSlot, VoicedVamp } from './vamps.ts';
