import type { AskedSeventh } from '../../../shared-theory/questions/question.ts';
import { SvgChord } from '../chord-text.tsx';
import { Lens } from '../music-marks.tsx';

/** Signs where the letter of the chord has not been shown; of none the word stands alone. */
const SIGNS = { none: '', seventh: '7', 'major-seventh': 'maj7' } as const;

/**
 * One cell: three notes of a chord as bars one above the other, and over them the fourth: none, a leaning one, or a soft round
 * one. Beside them the chord's symbol, or the sign alone, and its word.
 */
export function SeventhCell(props: {
  readonly seventh: AskedSeventh;
  /** The chord with that seventh, in ASCII; absent where its letter has not been shown. */
  readonly symbol?: string | undefined;
  readonly word: string;
  readonly x: number;
  /** Middle of its height. */
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly said?: boolean;
  readonly sounded?: boolean;
}) {
  const { seventh, symbol, word, x, y, width, height, said } = props;
  const bar = Math.min(width * 0.24, height * 0.8);
  const step = Math.min(height * 0.19, bar * 0.26);
  const low = y + 1.5 * step;
  const [left, right] = [x + width * 0.06, x + width * 0.06 + bar];
  const fourth = low - 3 * step;
  const text = { x: x + width * 0.42, size: Math.min(height * 0.36, width * 0.13) };
  const sign = SIGNS[seventh];
  const small = text.size * (symbol || sign ? 0.46 : 0.72);
  return (
    <g class={said ? 'said' : ''}>
      {props.sounded && (
        <Lens from={[x, low + step]} to={[x + width, low + step]} amplitude={height * 0.08} gauge={3} />
      )}
      <path
        d={[0, 1, 2].map((note) => `M${left} ${low - note * step}H${right}`).join('')}
        class={`line-ink ${said ? 'g6' : 'g4'}`}
      />
      {seventh === 'seventh' && (
        <path
          d={`M${left + bar * 0.1} ${fourth + step * 0.3}L${right - bar * 0.1} ${fourth - step * 0.7}`}
          class={`line-ink ${said ? 'g6' : 'g4'}`}
        />
      )}
      {seventh === 'major-seventh' && (
        <path
          d={`M${left} ${fourth + step * 0.2}Q${(left + right) / 2} ${fourth - step * 1.5} ${right} ${fourth + step * 0.2}`}
          class={`line-ink ${said ? 'g6' : 'g4'}`}
        />
      )}
      {symbol ? (
        <SvgChord symbol={symbol} x={text.x} y={y - text.size * 0.16} size={text.size} anchor="start" />
      ) : (
        sign && (
          <text x={text.x} y={y + text.size * 0.19} font-size={text.size} class="chord">
            {sign}
          </text>
        )
      )}
      <text
        x={text.x}
        y={symbol || sign ? y + text.size * 0.82 : y + small * 0.34}
        font-size={small}
        class={symbol || sign ? 'letter-words fill-ink2' : 'serif'}
      >
        {word}
      </text>
    </g>
  );
}
