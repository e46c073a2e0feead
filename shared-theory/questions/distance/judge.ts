import { distanceNumber, lineDigit, lineNumber } from '../../distance-line.ts';
import { parseKeyName } from '../../keys.ts';
import { modulo, pitchClass } from '../../pitch.ts';
import { directionOf } from '../../truth.ts';
import type { ErrorKind } from '../error-kinds.ts';
import { firstShown, FOLLOWS, needed, notRight, ownAnswer, RIGHT } from '../marks.ts';
import type { Judge, MarkingContext } from '../question.ts';
import { questionId } from '../round-questions.ts';
import { OCTAVE } from './ask.ts';
import { placeOnLine, placesOnLine } from './place.ts';

const FOURTH = 5;
const FIFTH = 7;
const WHOLE_TONE = 2;
/** Degrees that a minor scale has a fret lower than a major one, in semitones: b3, b6, b7. */
const FLAT_IN_MINOR: ReadonlySet<number> = new Set([3, 8, 10]);
/** Over fewer frets, frets and scale steps cannot be told apart. */
const FRETS_COUNTED_FROM = 3;
/** Under 3, in semitones, no short step of the scale is near. */
const SHORT_STEP_FROM = 4;

/** How far, counted on the major scale of the first root, and which way. Which way is no part of what a number shows. */
export const distanceJudge: Judge<'distance'> = {
  kind: 'distance',
  truth: ({ truth, target }) => placeOnLine(truth, target),
  mark: (answer, context) => {
    const places = placesOnLine(context.truth, context.target);
    const written = needed(places[0], 'distance', context.target);
    if (places.includes(answer)) return RIGHT;
    // Where several places are right, the one that the answer comes nearest to.
    const right = places.reduce(
      (best, place) => (creditOf(answer, place) > creditOf(answer, best) ? place : best),
      written,
    );
    if (isOtherWay(answer, right) && wayOf(answer) === wrongWaySaid(right, context)) return FOLLOWS;
    return notRight(creditOf(answer, right), errorOf(answer, right, context));
  },
  also: ({ truth, target }) => placesOnLine(truth, target).slice(1),
  heard: (answer) => String(answer),
  chance: ({ truth, target }) => Math.max(1, placesOnLine(truth, target).length) / (2 * OCTAVE + 1),
  leansOn: (target, questions) => [
    questionId('direction', target),
    ...questions.filter(({ kind, target: slot }) => kind === 'distance' && slot !== target).map(({ id }) => id),
  ],
};

function wayOf(place: number) {
  return directionOf(0, place);
}

/** Semitones up from home to the note, whatever octave it sounds in: 5 for up to 4 and down to 4. */
function above(place: number): number {
  return modulo(place, OCTAVE);
}

/** The right note in another octave, or as far the other way: only the way is wrong. */
function isOtherWay(answer: number, right: number): boolean {
  return above(answer) === above(right) || answer === -right;
}

/** The way that the student said the bass went, where that was wrong; null otherwise. */
function wrongWaySaid(right: number, context: MarkingContext) {
  const said = ownAnswer(context, 'direction', context.target);
  return said === wayOf(right) ? null : said;
}

/** Scale steps from home, downward ones negative, whatever flats and sharps stand before the number. */
function steps(place: number): number {
  return lineDigit(place) - (place < 0 ? 8 : 1);
}

function creditOf(answer: number, right: number): number {
  if (isOtherWay(answer, right)) return 0.6;
  if (wayOf(answer) !== wayOf(right)) return 0;
  const stepsOff = Math.abs(steps(answer) - steps(right));
  if (stepsOff === 0) return 0.5;
  // Four and five are such neighbours.
  return stepsOff === 1 && Math.abs(answer - right) <= WHOLE_TONE ? 0.3 : 0.15;
}

function errorOf(answer: number, right: number, context: MarkingContext): ErrorKind | null {
  const number = above(answer);
  const sounded = above(right);
  const minorHome = context.beside.qualities[0] === 'minor';
  return firstShown([
    ['right-note-other-octave', number === sounded],
    ['measures-between-the-basses', measuresBetweenTheBasses(answer, context)],
    ['measures-from-the-key', measuresFromTheKey(answer, right, context)],
    ['swaps-four-and-five', swapsFourAndFive(answer, right)],
    ['lays-the-minor-scale', minorHome && FLAT_IN_MINOR.has(sounded) && number === sounded + 1],
    ['measures-the-other-way', number === OCTAVE - sounded],
    ['starts-at-zero', startsAtZero(answer, right) && startsAtZeroElsewhere(right, context)],
    ['counts-frets-as-steps', countsFrets(answer, right)],
    ['forgets-the-half-steps', forgetsAShortStep(answer, right)],
  ]);
}

/** Whether the number is how far the bass went where that is not how far the root did. */
function measuresBetweenTheBasses(answer: number, { beside: { basses, roots }, target }: MarkingContext): boolean {
  const [home, bass] = [basses[0] ?? null, basses[target] ?? null];
  if (home === null || bass === null || (home === roots[0] && bass === roots[target])) return false;
  return above(answer) === above(bass - home);
}

/** Whether the number is the chord's degree in a key that owns the loop and has its 1 elsewhere than at home. */
function measuresFromTheKey(answer: number, right: number, { beside }: MarkingContext): boolean {
  const [home] = beside.chords;
  if (home === undefined) return false;
  const homes = beside.keys.majors.map((name) => above(pitchClass(home.root) - pitchClass(parseKeyName(name).tonic)));
  return homes.some((degree) => degree !== 0 && lineNumber(answer) === distanceNumber(degree + right));
}

function swapsFourAndFive(answer: number, right: number): boolean {
  const [number, sounded] = [above(answer), above(right)];
  return (number === FOURTH && sounded === FIFTH) || (number === FIFTH && sounded === FOURTH);
}

/** Whether the digit is one short. Five answered as four says more of four and five than of counting. */
export function startsAtZero(answer: number, right: number): boolean {
  return lineDigit(answer) === lineDigit(right) - 1 && !swapsFourAndFive(answer, right);
}

/** Whether the student's own number for another distance of the round is one short as well. */
function startsAtZeroElsewhere(right: number, context: MarkingContext): boolean {
  return context.beside.distances.some((place, slot) => {
    if (place === null || slot === context.target || distanceNumber(place) === distanceNumber(right)) return false;
    const answer = ownAnswer(context, 'distance', slot);
    return answer !== null && startsAtZero(answer, place);
  });
}

/** Whether the number is that of the frets between the roots as they sounded, home counted or not. */
function countsFrets(answer: number, right: number): boolean {
  const frets = Math.abs(right);
  return frets >= FRETS_COUNTED_FROM && [frets, frets + 1].map(String).includes(lineNumber(answer));
}

/** Whether the number is a fret off, and the right one is beside a short step or past one. */
function forgetsAShortStep(answer: number, right: number): boolean {
  const near = above(right) >= SHORT_STEP_FROM || Math.abs(right) === OCTAVE;
  return near && [1, OCTAVE - 1].includes(above(answer - right));
}
