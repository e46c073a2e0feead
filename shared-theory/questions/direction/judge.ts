import { directionOf } from '../../truth.ts';
import type { Direction } from '../../truth.ts';
import type { ErrorKind } from '../error-kinds.ts';
import { needed, notRight, RIGHT } from '../marks.ts';
import type { Judge, MarkingContext } from '../question.ts';

type Context = Omit<MarkingContext, 'earlier'>;

/** Direction of the bass: exact or nothing, save that a semitone heard as staying earns half. */
export const directionJudge: Judge<'direction'> = {
  kind: 'direction',
  truth: rightDirection,
  mark: (answer, context) => {
    const right = needed(rightDirection(context), 'direction', context.target);
    if (answer === right) return RIGHT;
    const { bass } = context.truth;
    const semitone = Math.abs((bass[context.target] ?? 0) - (bass[0] ?? 0)) === 1;
    return notRight(answer === 'same' && semitone ? 0.5 : 0, errorOf(answer, right, context));
  },
  also: () => [],
  heard: (answer) => answer,
  chance: () => 1 / 3,
};

function rightDirection({ truth, target }: Context): Direction | null {
  return truth.directions[target - 1] ?? null;
}

function errorOf(answer: Direction, right: Direction, { truth, target }: Context): ErrorKind | null {
  const [from, to] = [truth.top[0], truth.top[target]];
  if (from !== undefined && to !== undefined && answer === directionOf(from, to)) return 'follows-the-top-note';
  if (answer === 'same') return 'says-stays';
  if (right === 'same') return 'says-moves';
  return null;
}
