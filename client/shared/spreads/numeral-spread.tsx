import { questionWords } from '../../../server/protocol/words/en.ts';
import type { WireSpread, WireTruth } from '../../../server/protocol/views.ts';
import { NumeralBars } from '../drawings/numeral-bars.tsx';
import { HandTally } from './hand-tally.tsx';
import { isRight, type SpreadProps } from './spread-props.ts';

/** Answers with a line of their own. */
const MOST_LINES = 6;

type Line = { readonly key: string; readonly hands: number };

/**
 * The answers that stand on lines of their own, most given first, and the hands of all others. Once shown the right one has its
 * line, given or not.
 */
export function numeralLines(
  spread: WireSpread,
  truth?: WireTruth | null,
): { readonly lines: readonly Line[]; readonly others: number } {
  const given = spread.counts.map(({ key, count }) => ({ key, hands: count }));
  const first = given.slice(0, MOST_LINES);
  const missing = truth && !first.some(({ key }) => isRight(truth, key));
  const right = missing ? (given.find(({ key }) => isRight(truth, key)) ?? { key: truth.key, hands: 0 }) : null;
  const lines = right ? [...first.slice(0, MOST_LINES - 1), right] : first;
  const hands = (all: readonly Line[]): number => all.reduce((sum, line) => sum + line.hands, 0);
  return { lines, others: hands(given) - hands(lines) };
}

/** Which numerals were given: bars with a reading each and its tally, most given first; the right ones ring. */
export function NumeralSpread({ spread, truth, size, hands = true }: SpreadProps) {
  const { width, height, scale } = size;
  const { lines, others } = numeralLines(spread, truth);
  const rows = lines.length + (others > 0 ? 1 : 0);
  const row = Math.min(height / Math.max(1, rows), 128 * scale);
  const top = (height - row * rows) / 2;
  const bars = Math.max(1, ...lines.map(({ key }) => key.split(' ').length));
  const drawn = Math.min(width * 0.5, bars * 210 * scale);
  const tally = { x: drawn + 70 * scale, width: width - drawn - 90 * scale, height: row * 0.62, of: spread.of, scale };
  const most = Math.max(1, ...spread.counts.map(({ count }) => count), others);
  return (
    <>
      {lines.map(({ key, hands: given }, index) => {
        const y = top + row * (index + 0.5);
        return (
          <g key={key}>
            <NumeralBars
              bars={bars}
              numerals={key.split(' ')}
              x={1.5 * scale}
              y={y}
              width={drawn}
              height={row * 0.7}
              sounded={isRight(truth, key)}
            />
            {hands ? <HandTally {...tally} hands={given} most={most} y={y} /> : null}
          </g>
        );
      })}
      {hands && others > 0 ? (
        <g>
          <text
            class="spread-label fill-ink2"
            x={drawn}
            y={top + row * (rows - 0.5) + 12 * scale}
            font-size={36 * scale}
            text-anchor="end"
          >
            {questionWords.options.others}
          </text>
          <HandTally {...tally} hands={others} most={most} y={top + row * (rows - 0.5)} />
        </g>
      ) : null}
    </>
  );
}
