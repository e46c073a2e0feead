import { questionWords } from '../../../server/protocol/words/en.ts';
import { StrokesBar } from '../drawings/strokes.tsx';
import { HandTally } from './hand-tally.tsx';
import { serifWidth } from '../serif-width.ts';
import { handsOn, isRight, type SpreadProps } from './spread-props.ts';

const FEELS = ['all-downs', 'down-up'] as const;

/** How the hand was heard: a tally beside each row of bow signs. */
export function StrokesSpread({ spread, truth, size, hands = true }: SpreadProps) {
  const { width, height, scale } = size;
  const row = height / 2;
  const bar = { width: Math.min(0.42 * width, 560 * scale), height: Math.min(row * 0.62, 190 * scale) };
  const most = Math.max(1, ...spread.counts.map(({ count }) => count));
  return (
    <>
      <path class="line-string g1" d={`M0 ${row}H${width}`} />
      {FEELS.map((feel, index) => {
        const y = row * (index + 0.5);
        const top = y - bar.height / 2 - 28 * scale;
        const right = isRight(truth, feel);
        const name = questionWords.options[feel];
        const word = top + bar.height + 38 * scale;
        return (
          <g key={feel}>
            <StrokesBar feel={feel} x={0} y={top} width={bar.width} height={bar.height} sounded={right} />
            <text class="spread-label" x={0} y={word} font-size={36 * scale}>
              {name}
            </text>
            {right ? (
              <path class="line-brass g6" d={`M0 ${word + 14 * scale}h${serifWidth(name, 34 * scale)}`} />
            ) : null}
            {hands ? (
              <HandTally
                hands={handsOn(spread, feel)}
                of={spread.of}
                most={most}
                x={bar.width + 90 * scale}
                y={y}
                width={width - bar.width - 90 * scale}
                scale={scale}
              />
            ) : null}
          </g>
        );
      })}
    </>
  );
}
