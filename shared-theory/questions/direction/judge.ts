import { distanceNumber } from '../../distance-line.ts';
import { modulo } from '../../pitch.ts';
import { directionOf } from '../../truth.ts';
import type { Direction } from '../../truth.ts';
import type { ErrorKind } from '../error-kinds.ts';
import { firstShown, needed, notRight, ownAnswer, RIGHT } from '../marks.ts';
import type { AskedOf, Judge, MarkingContext } from '../question.ts';
import { questionId } from '../round-questions.ts';

/** A bass that moves less far is not taken for its own octave: a fourth, in semitones. */
const OCTAVE_DOUBT_FROM = 5;

/** Direction of the bass: exact or nothing, save that a semitone heard as staying earns half. */
export const directionJudge: Judge<'direction'> = {
  kind: 'direction',
  truth: rightDirection,
  mark: (answer, context) => {
    const right = needed(rightDirection(context), 'direction', context.target);
    if (answer === right) return RIGHT;
    const stays = answer === 'same' && moved(context) === 1;
    return notRight(stays ? 0.5 : 0, errorOf(answer, right, context));
  },
  also: () => [],
  heard: (answer) => answer,
  chance: () => 1 / 3,
  leansOn: (target) => [questionId('distance', target)],
};

function rightDirection({ truth, target }: AskedOf): Direction | null {
  return truth.directions[target - 1] ?? null;
}

/** Semitones that the bass moved, or as far as the two basses or the distance tell them; 0 where none may be told. */
function moved({ beside: { bass, basses, distances }, truth, target }: MarkingContext): number {
  const [from, to] = [bass[0], bass[target]];
  if (from !== undefined && to !== undefined) return Math.abs(to - from);
  const [home, other] = [basses[0] ?? null, basses[target] ?? null];
  if (home === null || other === null) return Math.abs(distances[target] ?? 0);
  const up = modulo(other - home, 12);
  return truth.directions[target - 1] === 'down' ? modulo(-up, 12) : up;
}

function errorOf(answer: Direction, right: Direction, context: MarkingContext): ErrorKind | null {
  return firstShown([
    ['follows-the-top-note', followsTheTop(answer, context)],
    ['right-note-other-octave', moved(context) >= OCTAVE_DOUBT_FROM && knowsTheNote(context)],
    ['answers-the-way-back', answersTheWayBack(answer, right, context)],
    ['says-stays', answer === 'same'],
    ['says-moves', right === 'same'],
  ]);
}

function followsTheTop(answer: Direction, { beside: { top }, target }: MarkingContext): boolean {
  const [from, to] = [top[0], top[target]];
  return from !== undefined && to !== undefined && answer === directionOf(from, to);
}

/** Whether the student's own distance to the chord has the right number, on either side of home. */
function knowsTheNote(context: MarkingContext): boolean {
  const place = context.beside.distances[context.target] ?? null;
  const answer = ownAnswer(context, 'distance', context.target);
  return place !== null && answer !== null && distanceNumber(answer) === distanceNumber(place);
}

/** Whether the answer fits the change heard last, where two chords go to and fro and home had come back. */
function answersTheWayBack(answer: Direction, right: Direction, { beside }: MarkingContext): boolean {
  const opposite = answer !== 'same' && right !== 'same';
  return opposite && beside.slots === 2 && beside.returned === true;
}
