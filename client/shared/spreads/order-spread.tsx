import { BARS } from '../../../shared-theory/questions/order/ask.ts';
import { OrderBars, OrderLetter } from '../drawings/order-bars.tsx';
import { HandTally } from './hand-tally.tsx';
import type { SpreadProps } from './spread-props.ts';
import type { WireSpread } from '../../../server/protocol/views.ts';

/** Hands by bar and letter: `hands[bar][letter]`. Letters end with the last that was written anywhere, or is right. */
export function handsOnBars(
  { counts }: Pick<WireSpread, 'counts'>,
  right: readonly number[] = [],
): readonly (readonly number[])[] {
  const orders = counts.map(({ key, count }) => ({ letters: key.split(' ').map(Number), count }));
  const most = Math.max(1, ...right, ...orders.flatMap(({ letters }) => letters));
  return Array.from({ length: BARS }, (_, bar) =>
    Array.from({ length: most + 1 }, (_, letter) =>
      orders.reduce((sum, { letters, count }) => sum + (letters[bar] === letter ? count : 0), 0),
    ),
  );
}

/** In which order the chords were heard: under each bar the letters that were written there, a stroke a hand. */
export function OrderSpread({ spread, truth, size, hands = true }: SpreadProps) {
  const { width, height, scale } = size;
  const right = truth ? truth.key.split(' ').map(Number) : undefined;
  const on = handsOnBars(spread, right);
  const bar = width / BARS;
  const rows = on[0]?.length ?? 1;
  const head = right ? Math.min(height * 0.3, 150 * scale) : 0;
  const row = Math.min((height - head) / rows, 118 * scale);
  const top = head + (height - head - row * rows) / 2;
  const letter = Math.min(54 * scale, row * 0.5, bar * 0.2);
  const most = Math.max(1, ...on.flat());
  return (
    <>
      {right ? (
        <OrderBars order={right} x={1.5 * scale} y={head / 2} width={width - 3 * scale} height={head * 0.62} sounded />
      ) : null}
      {on.map((letters, at) => (
        <g key={at}>
          {at > 0 ? <path class="line-string g1" d={`M${at * bar} ${top}V${top + rows * row}`} /> : null}
          {letters.map((given, index) => {
            const y = top + (index + 0.5) * row;
            // The first bar is A for everybody: no other letter has a place there.
            if (at === 0 && index > 0) return null;
            return (
              <g key={index}>
                <OrderLetter letter={index} x={at * bar + letter} y={y} size={letter} />
                {hands ? (
                  <HandTally
                    hands={given}
                    of={spread.of}
                    most={most}
                    x={at * bar + 2.1 * letter}
                    y={y}
                    width={bar - 2.4 * letter}
                    scale={scale * Math.min(1, bar / (300 * scale))}
                    height={row * 0.6}
                  />
                ) : null}
              </g>
            );
          })}
        </g>
      ))}
    </>
  );
}
