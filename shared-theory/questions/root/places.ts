import { STANDARD_TUNING } from '../../neck.ts';
import type { PitchClass } from '../../pitch.ts';
import { midiPitchClass } from '../../pitch.ts';
import type { NeckPlace, QuestionSettings } from '../question.ts';
import { neckPlaces } from './ask.ts';

/** Pitch class of a place on the neck in standard tuning. */
export function pitchClassAt({ string, fret }: NeckPlace): PitchClass {
  return midiPitchClass(STANDARD_TUNING[string === 6 ? 0 : 1] + fret);
}

/** Every place of a note on the neck pad, lowest fret first; none for null. */
export function placesOf(sound: PitchClass | null, { capo }: QuestionSettings): readonly NeckPlace[] {
  return neckPlaces(capo)
    .filter((place) => pitchClassAt(place) === sound)
    .toSorted((a, b) => a.fret - b.fret);
}
