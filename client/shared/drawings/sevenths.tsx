import type { ComponentChildren } from 'preact';
import { seventhSays } from '../../../server/protocol/words/asked/seventh.ts';
import { printChord } from '../names.ts';
import type { AskedSeventh } from '../../../shared-theory/questions/question.ts';
import { SvgChord } from '../chord-text.tsx';
import { Lens } from '../music-marks.tsx';
import { point, type Point } from '../pencil.ts';
import type { SeventhSymbols } from '../seventh-symbol.ts';

/** Signs where the letter of the chord has not been shown; of none the word stands alone. */
const SIGNS = { none: '', seventh: '7', 'major-seventh': 'maj7' } as const;

type Cell = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** Where a cell's writing begins, how large it is, and how wide the widest of the three stands. `y` of a cell is its middle. */
export function seventhWriting({ x, width, height }: Cell, symbols: SeventhSymbols | undefined) {
  const longest = symbols ? printChord(symbols['major-seventh']).text.length * 0.6 : 2.7;
  const size = Math.min(height * 0.36, width * 0.13, (width * 0.55) / longest);
  return { x: x + width * 0.4, size, width: size * Math.max(3.4, longest) };
}

/**
 * One cell: three notes of a chord as bars one above the other, and over them the fourth: none, a leaning one, or a soft round
 * one. Beside them the chord's symbol, or the sign alone, and its word. The right one rings on each of its notes.
 */
export function SeventhCell(
  props: Cell & {
    readonly seventh: AskedSeventh;
    readonly symbols: SeventhSymbols | undefined;
    readonly said?: boolean;
    readonly sounded?: boolean;
    readonly children?: ComponentChildren;
  },
) {
  const { seventh, symbols, x, y, width, height, said } = props;
  const bar = Math.min(width * 0.24, height * 0.8);
  const step = Math.min(height * 0.19, bar * 0.26);
  const low = y + 1.5 * step;
  const [left, right] = [x + width * 0.06, x + width * 0.06 + bar];
  const line = said ? 'line-ink g6' : 'line-ink g4';
  const fourth = low - 3 * step;
  const lean = [
    [left + bar * 0.1, fourth + step * 0.3],
    [right - bar * 0.1, fourth - step * 0.7],
  ] as const;
  const third: readonly (readonly [Point, Point])[] = [0, 1, 2].map((note) => [
    [left, low - note * step],
    [right, low - note * step],
  ]);
  const soft = [
    [left, fourth + step * 0.2],
    [right, fourth + step * 0.2],
  ] as const;
  const top = seventh === 'seventh' ? [lean] : seventh === 'major-seventh' ? [soft] : [];
  const writing = seventhWriting(props, symbols);
  const sign = SIGNS[seventh];
  const alone = !symbols && !sign;
  const small = writing.size * (alone ? 0.72 : 0.46);
  return (
    <g class={said ? 'said' : ''}>
      {props.sounded &&
        [...third, ...top].map(([from, to]) => (
          <Lens key={point(from)} from={from} to={to} amplitude={step * 0.34} gauge={3} />
        ))}
      <path d={third.map(([from, to]) => `M${point(from)}L${point(to)}`).join('')} class={line} />
      {seventh === 'seventh' && <path d={`M${point(lean[0])}L${point(lean[1])}`} class={line} />}
      {seventh === 'major-seventh' && (
        <path d={`M${point(soft[0])}Q${(left + right) / 2} ${fourth - step * 1.5} ${point(soft[1])}`} class={line} />
      )}
      {symbols ? (
        <SvgChord
          symbol={symbols[seventh]}
          x={writing.x}
          y={y - writing.size * 0.16}
          size={writing.size}
          anchor="start"
        />
      ) : (
        sign && (
          <text x={writing.x} y={y + writing.size * 0.19} font-size={writing.size} class="chord">
            {sign}
          </text>
        )
      )}
      <text
        x={writing.x}
        y={alone ? y + small * 0.34 : y + writing.size * 0.82}
        font-size={small}
        class={alone ? 'serif spread-word' : 'letter-words spread-label fill-ink2'}
      >
        {seventhSays[seventh]}
      </text>
      {props.children}
    </g>
  );
}
