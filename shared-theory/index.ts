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
export { generate } from './generate.ts';
export type { GeneratedVamp, GenerateRequest, RecentVamp } from './generate.ts';
export { allDowns, grooveById, GrooveError, GROOVES, parseGroove } from './grooves.ts';
export type { Groove, GrooveSlot } from './grooves.ts';
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
export { levelOf, LEVELS } from './levels.ts';
export type { Level, LevelNumber } from './levels.ts';
export { barsOf, bassAlone, countIn, holdSlot, withTempo } from './live.ts';
export type { CountInBeat, PerformedBar } from './live.ts';
export { BEATS_PER_BAR } from './meters.ts';
export { bassOf, shapeNotes, shapesFor, STANDARD_TUNING, usualShape } from './neck.ts';
export { grooveOf, perform } from './perform.ts';
export type { Performance, PerformOptions, SoundedNote } from './perform.ts';
export { midiFrequency, midiPitchClass, pitchClass, transpose } from './pitch.ts';
export type { Interval, NoteName, PitchClass } from './pitch.ts';
export { printChord, printDistance, printKey, printNote, printNumeral } from './printer.ts';
export type { Naming, Printed, PrintedDegree } from './printer.ts';
export { directionOf, distanceOf, guitarTruth, POLICIES, truthOf } from './truth.ts';
export type { Direction, Distance, GuitarOptions, Policy, StatedDirection, StrokeFeel, Truth } from './truth.ts';
export { parseVamp, ReadingError } from './vamps.ts';
export type { Frets, Meter, Slot, VoicedSlot, VoicedVamp } from './vamps.ts';
export { tempoRange, voice } from './voice.ts';
export type { VoiceRequest } from './voice.ts';
