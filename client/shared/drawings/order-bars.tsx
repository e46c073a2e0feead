import type { ComponentChildren } from 'preact';
import { orderAnswers } from '../../../server/protocol/words/asked/order.ts';
import { LoopBars } from './loop-bars.tsx';

/**
 * Letters of an order in the bars of a loop, each in the square of a rehearsal mark, so that none is taken for a chord. `''`
 * where nothing is written.
 */
export function OrderBars(props: {
  readonly order: readonly (number | '')[];
  readonly x?: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly sounded?: boolean;
  readonly children?: ComponentChildren;
}) {
  const { order, sounded, ...bars } = props;
  return (
    <LoopBars
      {...bars}
      bars={order.length}
      sounded={() => sounded === true}
      written={(bar, x, size) => {
        const letter = order[bar];
        return letter !== undefined && letter !== '' && <OrderLetter letter={letter} x={x} y={props.y} size={size} />;
      }}
    />
  );
}

/** One letter in its square. */
export function OrderLetter(props: {
  readonly letter: number;
  readonly x: number;
  readonly y: number;
  readonly size: number;
}) {
  const { x, y, size } = props;
  const half = size * 0.66;
  return (
    <>
      <rect x={x - half} y={y - half} width={2 * half} height={2 * half} class="fill-paper" />
      <rect x={x - half} y={y - half} width={2 * half} height={2 * half} class="line-ink g3" />
      <text x={x} y={y + size * 0.35} font-size={size} text-anchor="middle" class="digit">
        {orderAnswers.letters[props.letter]}
      </text>
    </>
  );
}
