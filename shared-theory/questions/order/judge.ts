import { chordIndices, otherIndices } from '../../different-chords.ts';
import { firstShown, needed, notRight, RIGHT } from '../marks.ts';
import { chordsOf } from '../own-chords.ts';
import type { AskedOf, Judge } from '../question.ts';
import { BARS, orderAsk, ORDERS } from './ask.ts';

/** Credit of the right order from another start. */
const ROTATED = 0.6;

/** In which order the chords come: the share of slots that are right, or more for the right order from another start. */
export const orderJudge: Judge<'order'> = {
  kind: 'order',
  truth: rightOrder,
  mark: (answer, context) => {
    const right = needed(rightOrder(context), 'order', context.target);
    if ([right, ...alsoRight(context)].some((order) => orderAsk.key(answer) === orderAsk.key(order))) return RIGHT;
    const rotated = startsElsewhere(answer, right);
    const share = right.filter((chord, slot) => answer[slot] === chord).length / right.length;
    const error = firstShown([
      ['starts-the-loop-elsewhere', rotated],
      ['hears-a-return-as-new', chordsIn(answer) > chordsIn(right)],
      ['hears-a-new-chord-as-a-return', chordsIn(answer) < chordsIn(right)],
    ]);
    return notRight(rotated ? Math.max(ROTATED, share) : share, error);
  },
  also: alsoRight,
  heard: orderAsk.key,
  chance: (context) => (1 + alsoRight(context).length) / ORDERS.length,
};

function rightOrder({ truth, settings }: AskedOf): readonly number[] | null {
  const order = chordIndices(chordsOf(truth), settings);
  return order.length === BARS ? order : null;
}

/** The orders of those who hear one chord where the same notes come back over another bass. */
function alsoRight({ truth, settings }: AskedOf): readonly (readonly number[])[] {
  return otherIndices(chordsOf(truth), settings).filter(({ length }) => length === BARS);
}

function chordsIn(order: readonly number[]): number {
  return new Set(order).size;
}

/** Whether the answer is the loop as it would be written from another of its slots. */
function startsElsewhere(answer: readonly number[], right: readonly number[]): boolean {
  return right.some(
    (_, start) => orderAsk.key(answer) === orderAsk.key(renumbered([...right.slice(start), ...right.slice(0, start)])),
  );
}

/** The same order with its chords numbered as they come. */
function renumbered(order: readonly number[]): readonly number[] {
  const numbers = [...new Set(order)];
  return order.map((chord) => numbers.indexOf(chord));
}
