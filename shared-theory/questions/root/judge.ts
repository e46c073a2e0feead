import type { Quality } from '../../chords.ts';
import type { PitchClass } from '../../pitch.ts';
import { midiPitchClass, modulo, pitchClass } from '../../pitch.ts';
import type { ErrorKind } from '../error-kinds.ts';
import { firstShown, FOLLOWS, needed, notRight, ownAnswer, RIGHT } from '../marks.ts';
import type { AskedOf, Judge, MarkingContext, NeckPlace } from '../question.ts';
import { questionId } from '../round-questions.ts';
import { NECK_PLACES } from './ask.ts';
import { pitchClassAt, placesOf } from './places.ts';

/** Semitones from the root to the chord's own third; chords without one have no entry. */
const THIRD: Partial<Record<Quality, number>> = { major: 4, minor: 3, diminished: 3, augmented: 4 };
/** Semitones from the root to the chord's own fifth, where it is not perfect. */
const ALTERED_FIFTH: Partial<Record<Quality, number>> = { diminished: 6, augmented: 8 };
const FOURTH = 5;
const FIFTH = 7;
/** Where the relative chord stands and what it is: A minor of C major, C major of A minor. */
const RELATIVE: Partial<Record<Quality, { readonly above: number; readonly quality: Quality }>> = {
  major: { above: 9, quality: 'minor' },
  minor: { above: 3, quality: 'major' },
};

/** Root of a chord, by pitch class: any string, any octave, any spelling. */
export const rootJudge: Judge<'root'> = {
  kind: 'root',
  truth: (context) => rightPlaces(context)[0] ?? null,
  mark: (answer, context) => {
    const root = needed(rootOf(context), 'root', context.target);
    const above = modulo(pitchClassAt(answer) - root, 12);
    if (above === 0) return RIGHT;
    const shift = constantShift(above, root, context);
    if (shift === 'goes-on') return FOLLOWS;
    if (shift === 'begins') return notRight(0.5, 'constant-shift');
    return notRight(creditOf(above, context), errorOf(above, root, context));
  },
  also: (context) => rightPlaces(context).slice(1),
  heard: (answer) => String(pitchClassAt(answer)),
  chance: (context) => rightPlaces(context).length / NECK_PLACES.length,
  leansOn: (target, questions) => [
    questionId('quality', target),
    ...questions.filter(({ kind, target: slot }) => kind === 'root' && slot !== target).map(({ id }) => id),
  ],
};

function rootOf({ truth, target }: AskedOf): PitchClass | null {
  const name = truth.roots[target];
  return name === undefined ? null : pitchClass(name);
}

/** Every place of the root, lowest fret first. */
function rightPlaces(context: AskedOf): readonly NeckPlace[] {
  return placesOf(rootOf(context));
}

function creditOf(above: number, { beside, target }: MarkingContext): number {
  const quality = beside.qualities[target];
  if (above === fifthOf(quality) || above === FOURTH) return 0.4;
  if (above === thirdOf(quality)) return 0.25;
  if (above === 1 || above === 11) return 0.25;
  return 0;
}

function errorOf(above: number, root: PitchClass, context: MarkingContext): ErrorKind | null {
  const { beside, target } = context;
  const quality = beside.qualities[target];
  const top = beside.top[target];
  return firstShown([
    ['swaps-relatives', namesTheRelative(above, context)],
    ['hears-the-fifth', above === fifthOf(quality)],
    ['hears-the-fourth-above', above === FOURTH],
    ['hears-the-third', above === thirdOf(quality)],
    ['one-fret-off', above === 1 || above === 11],
    ['names-the-top-note', top !== undefined && modulo(root + above, 12) === midiPitchClass(top)],
  ]);
}

/**
 * Whether the student's roots of two or more chords all lie equally far from the right ones: begun with the earliest of them,
 * gone on with in the others, whose steps from it are right. Null where they do not.
 */
function constantShift(above: number, root: PitchClass, context: MarkingContext): 'begins' | 'goes-on' | null {
  const others = context.beside.roots.flatMap((sounded, slot) => {
    const place = slot === context.target || sounded === null ? null : ownAnswer(context, 'root', slot);
    return place && sounded !== null ? [{ slot, sounded, above: modulo(pitchClassAt(place) - sounded, 12) }] : [];
  });
  const moves = others.some(({ sounded }) => sounded !== root);
  if (!moves || others.some((other) => other.above !== above)) return null;
  return others.some(({ slot }) => slot < context.target) ? 'goes-on' : 'begins';
}

/** Whether the root is the relative chord's, and the student's own quality of the chord is too. */
function namesTheRelative(above: number, context: MarkingContext): boolean {
  const relative = RELATIVE[context.beside.qualities[context.target] ?? 'power'];
  return relative?.above === above && ownAnswer(context, 'quality', context.target) === relative.quality;
}

function thirdOf(quality: Quality | null | undefined): number | null {
  return quality ? (THIRD[quality] ?? null) : null;
}

/** Semitones to the chord's own fifth; perfect until its quality may be told. */
function fifthOf(quality: Quality | null | undefined): number {
  return (quality ? ALTERED_FIFTH[quality] : undefined) ?? FIFTH;
}
