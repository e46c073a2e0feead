import type { Quality } from '../../chords.ts';
import { STANDARD_TUNING } from '../../neck.ts';
import type { PitchClass } from '../../pitch.ts';
import { midiPitchClass, modulo, pitchClass } from '../../pitch.ts';
import type { ErrorKind } from '../error-kinds.ts';
import { needed, notRight, RIGHT } from '../marks.ts';
import type { AskedOf, Judge, MarkingContext, NeckPlace } from '../question.ts';
import { NECK_PLACES } from './ask.ts';

/** Semitones from the root to the chord's own third; chords without one have no entry. */
const THIRD: Partial<Record<Quality, number>> = { major: 4, minor: 3, diminished: 3, augmented: 4 };
/** Semitones from the root to the chord's own fifth, where it is not perfect. */
const ALTERED_FIFTH: Partial<Record<Quality, number>> = { diminished: 6, augmented: 8 };
const FOURTH = 5;
const FIFTH = 7;

/** Root of a chord, by pitch class: any string, any octave, any spelling. */
export const rootJudge: Judge<'root'> = {
  kind: 'root',
  truth: (context) => rightPlaces(context)[0] ?? null,
  mark: (answer, context) => {
    const root = needed(rootOf(context), 'root', context.target);
    const above = modulo(pitchClassAt(answer) - root, 12);
    if (above === 0) return RIGHT;
    return notRight(creditOf(above, context), errorOf(above, root, context));
  },
  also: (context) => rightPlaces(context).slice(1),
  heard: (answer) => String(pitchClassAt(answer)),
  chance: (context) => rightPlaces(context).length / NECK_PLACES.length,
};

/** Pitch class of a place on the neck in standard tuning. */
export function pitchClassAt({ string, fret }: NeckPlace): PitchClass {
  return midiPitchClass(STANDARD_TUNING[string === 6 ? 0 : 1] + fret);
}

function rootOf({ truth, target }: AskedOf): PitchClass | null {
  const name = truth.roots[target];
  return name === undefined ? null : pitchClass(name);
}

/** Every place of the root, lowest fret first. */
function rightPlaces(context: AskedOf): readonly NeckPlace[] {
  const root = rootOf(context);
  return NECK_PLACES.filter((place) => pitchClassAt(place) === root).toSorted((a, b) => a.fret - b.fret);
}

function creditOf(above: number, { beside, target }: MarkingContext): number {
  const quality = beside.qualities[target];
  if (above === fifthOf(quality) || above === FOURTH) return 0.4;
  if (above === thirdOf(quality)) return 0.25;
  if (above === 1 || above === 11) return 0.25;
  return 0;
}

function errorOf(above: number, root: PitchClass, { beside, target }: MarkingContext): ErrorKind | null {
  const quality = beside.qualities[target];
  if (above === fifthOf(quality)) return 'hears-the-fifth';
  if (above === FOURTH) return 'hears-the-fourth-above';
  if (above === thirdOf(quality)) return 'hears-the-third';
  if (above === 1 || above === 11) return 'one-fret-off';
  const top = beside.top[target];
  if (top !== undefined && modulo(root + above, 12) === midiPitchClass(top)) return 'names-the-top-note';
  return null;
}

function thirdOf(quality: Quality | null | undefined): number | null {
  return quality ? (THIRD[quality] ?? null) : null;
}

/** Semitones to the chord's own fifth; perfect until its quality may be told. */
function fifthOf(quality: Quality | null | undefined): number {
  return (quality ? ALTERED_FIFTH[quality] : undefined) ?? FIFTH;
}
