import type { Quality } from '../../chords.ts';
import type { PitchClass } from '../../pitch.ts';
import { midiPitchClass, modulo, pitchClass } from '../../pitch.ts';
import type { ErrorKind } from '../error-kinds.ts';
import { firstShown, FOLLOWS, needed, notRight, ownAnswer, RIGHT } from '../marks.ts';
import { chordsOf } from '../own-chords.ts';
import type { AskedOf, Judge, MarkingContext, NeckPlace } from '../question.ts';
import { questionId } from '../round-questions.ts';
import { namesOfSound } from '../same-sound.ts';
import { neckPlaces } from './ask.ts';
import { pitchClassAt, placesOf } from './places.ts';

/** Semitones from the root to the chord's own third; chords without one have no entry, nor has one whose third is as good a root. */
const THIRD: Partial<Record<Quality, number>> = { major: 4, minor: 3, diminished: 3 };
/** Semitones from the root to the chord's own fifth, where it is not perfect. */
const ALTERED_FIFTH: Partial<Record<Quality, number>> = { diminished: 6, augmented: 8 };
const FOURTH = 5;
const FIFTH = 7;
/** Where the relative chord stands and what it is: A minor of C major, C major of A minor. */
const RELATIVE: Partial<Record<Quality, { readonly above: number; readonly quality: Quality }>> = {
  major: { above: 9, quality: 'minor' },
  minor: { above: 3, quality: 'major' },
};

/** Credit of the bass where it is not the root. */
const GIVES_THE_BASS = 0.6;
/** Credit of the earliest root of a constant shift, and of the name that a shape has without the capo. */
const SHIFTED = 0.5;

/**
 * Root of a chord, by pitch class: any string, any octave, any spelling. Where what sounds may be named from another root as well,
 * that is as right.
 */
export const rootJudge: Judge<'root'> = {
  kind: 'root',
  truth: (context) => rightPlaces(context)[0] ?? null,
  mark: (answer, context) => {
    const root = needed(rootOf(context), 'root', context.target);
    const sound = pitchClassAt(answer);
    if (rootsOf(context).includes(sound)) return RIGHT;
    const above = modulo(sound - root, 12);
    const shift = constantShift(above, root, context);
    if (shift === 'goes-on') return FOLLOWS;
    const heard = { above, shifted: shift === 'begins', sound };
    return notRight(creditOf(heard, context), errorOf(heard, context));
  },
  also: (context) => rightPlaces(context).slice(1),
  heard: (answer) => String(pitchClassAt(answer)),
  chance: (context) => rightPlaces(context).length / neckPlaces(context.settings.capo).length,
  leansOn: (target, questions) => [
    questionId('quality', target),
    ...questions.filter(({ kind, target: slot }) => kind === 'root' && slot !== target).map(({ id }) => id),
  ],
};

function rootOf({ truth, target }: AskedOf): PitchClass | null {
  const name = truth.roots[target];
  return name === undefined ? null : pitchClass(name);
}

/** The root as written, then those of the other ways to read what sounds. */
function rootsOf({ truth, target }: AskedOf): readonly PitchClass[] {
  const written = chordsOf(truth)[target];
  return written === undefined ? [] : [...new Set(namesOfSound(written).map(({ root }) => pitchClass(root)))];
}

/** Every place of each root, lowest fret first. */
function rightPlaces(context: AskedOf): readonly NeckPlace[] {
  return rootsOf(context).flatMap((root) => placesOf(root, context.settings));
}

/** A wrong root: semitones above the right one, its own sound, and whether a constant shift begins with it. */
type Heard = { readonly above: number; readonly shifted: boolean; readonly sound: PitchClass };

function creditOf(heard: Heard, context: MarkingContext): number {
  const part = partOf(heard.above, context);
  if (givesTheBass(heard, context)) return GIVES_THE_BASS;
  return heard.shifted || namesTheShape(heard, context) ? Math.max(SHIFTED, part) : part;
}

function partOf(above: number, { beside, target }: MarkingContext): number {
  const quality = beside.qualities[target];
  if (above === fifthOf(quality) || above === FOURTH) return 0.4;
  if (above === thirdOf(quality)) return 0.25;
  if (above === 1 || above === 11) return 0.25;
  return 0;
}

function errorOf(heard: Heard, context: MarkingContext): ErrorKind | null {
  const { beside, target } = context;
  const { above, shifted, sound } = heard;
  const quality = beside.qualities[target];
  const top = beside.top[target];
  return firstShown([
    ['names-the-shape', namesTheShape(heard, context)],
    ['constant-shift', shifted],
    ['gives-the-bass', givesTheBass(heard, context)],
    ['swaps-relatives', namesTheRelative(above, context)],
    ['hears-the-fifth', above === fifthOf(quality)],
    ['hears-the-fourth-above', above === FOURTH],
    ['hears-the-third', above === thirdOf(quality)],
    ['one-fret-off', above === 1 || above === 11],
    ['names-the-top-note', top !== undefined && sound === midiPitchClass(top)],
  ]);
}

/** Whether the answer is the note in the bass of a chord that stands on another note than its root. */
function givesTheBass({ above, sound }: Heard, { beside, target }: MarkingContext): boolean {
  return above !== 0 && beside.basses[target] === sound;
}

/** Whether the answer is the root that the shape would have without the class's capo. */
function namesTheShape({ above }: Heard, { settings: { capo = 0 } }: MarkingContext): boolean {
  return capo > 0 && above === modulo(-capo, 12);
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
