import { orderAnswers, orderSpoken } from '../../../server/protocol/words/asked/order.ts';
import { ordinal } from '../../../server/protocol/words/ordinals.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { useBox } from '../../shared/box.ts';
import { OrderBars } from '../../shared/drawings/order-bars.tsx';
import { tapped, type WrittenOrder } from '../../shared/drawings/order-letters.ts';
import { orderText } from '../../shared/order-text.ts';
import { Choice } from './choice.tsx';
import type { PadModule, PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

export const spoken = { order: orderSpoken };
export const said: PadModule<WrittenOrder>['said'] = (_asking, order) => orderText(order.map(Number));

const BLANK: WrittenOrder = [0, '', '', ''];

/** One line of four bars: each tap on a bar writes the next letter into it. Once shown, the right order stands below one's own. */
export function Pad({ chosen, closed, dashed, truth, onChoose }: PadProps<WrittenOrder>) {
  const [ref, { width, height }] = useBox({ width: 328, height: 420 });
  const order = chosen ?? BLANK;
  const right = truth?.answer as readonly number[] | undefined;
  const isRight = right?.join(' ') === order.join(' ');
  const rows = right && !isRight ? 2 : 1;
  const row = Math.min(height / rows, 260);
  const bar = width / order.length;
  const top = right ? (height - rows * row) / 2 : Math.max(0, (height - row) * 0.6);
  const own = { y: top + row / 2, width: width - 2, x: 1, height: Math.min(row * 0.6, 120) };
  const empty = chosen === null;
  return (
    <div class="fill" ref={ref}>
      <svg class="under" width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        {!(right && empty) && (
          <OrderBars order={order} {...own} sounded={isRight}>
            {dashed &&
              !empty &&
              order.map(
                (letter, at) =>
                  letter !== '' && (
                    <Ring key={at} x={bar * (at + 0.5)} y={own.y} rx={bar * 0.42} ry={bar * 0.42} dashed />
                  ),
              )}
          </OrderBars>
        )}
        {right && !isRight && <OrderBars order={right} {...own} y={own.y + row} sounded />}
      </svg>
      {order.map((letter, at) => (
        <Choice
          key={at}
          label={fill(orderAnswers.place, {
            which: ordinal(at),
            letter: letter === '' ? orderAnswers.empty : (orderAnswers.letters[letter] ?? ''),
          })}
          pressed={letter !== '' && !empty}
          // The first is always A: there is nothing to choose.
          closed={closed || at === 0}
          at={{ x: bar * at, y: top, width: bar, height: row }}
          onTap={() => onChoose(tapped(order, at))}
        />
      ))}
    </div>
  );
}
