import { directionOf } from '../../truth.ts';
import type { Direction } from '../../truth.ts';
import type { ErrorKind } from '../error-kinds.ts';
import { needed, notRight, RIGHT } from '../marks.ts';
import type { AskedOf, Judge, MarkingContext } from '../question.ts';

/** Direction of the bass: exact or nothing, save that a semitone heard as staying earns half. */
export const directionJudge: Judge<'direction'> = {
  kind: 'direction',
  truth: rightDirection,
  mark: (answer, context) => {
    const right = needed(rightDirection(context), 'direction', context.target);
    if (answer === right) return RIGHT;
    const { bass } = context.beside;
    const semitone = Math.abs((bass[context.target] ?? 0) - (bass[0] ?? 0)) === 1;
    return notRight(answer === 'same' && semitone ? 0.5 : 0, errorOf(answer, right, context));
  },
  also: () => [],
  heard: (answer) => answer,
  chance: () => 1 / 3,
};

function rightDirection({ truth, target }: AskedOf): Direction | null {
  return truth.directions[target - 1] ?? null;
}

function errorOf(answer: Direction, right: Direction, { beside, target }: MarkingContext): ErrorKind | null {
  const [from, to] = [beside.top[0], beside.top[target]];
  if (from !== undefined && to !== undefined && answer === directionOf(from, to)) return 'follows-the-top-note';
  if (answer === 'same') return 'says-stays';
  if (right === 'same') return 'says-moves';
  return null;
}
