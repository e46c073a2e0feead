import { numberWord } from '../../../server/protocol/words/counting.ts';
import { questionWords } from '../../../server/protocol/words/en.ts';
import { BAR_COUNTS } from '../../../shared-theory/questions/bar-count/ask.ts';
import { PAIR_BARS, pairBar, type PairKind } from '../drawings/pair-marks-layout.ts';
import { PairBar } from '../drawings/pair-marks.tsx';
import { serifWidth } from '../serif-width.ts';
import { HandTally } from './hand-tally.tsx';
import { handsOn, isRight, type SpreadProps } from './spread-props.ts';

/** What the feel was heard to be: a tally beside each bar of the pad. */
export function PairSpread({ spread, truth, size, hands = true }: SpreadProps) {
  const { width, height, scale } = size;
  const choices = choicesOf(spread.kind);
  const row = height / choices.length;
  const few = choices.length === 2;
  const label = Math.min(Math.max(36 * scale, 13), row * 0.34);
  const bar = {
    width: Math.min((few ? 0.44 : 0.36) * width, 700 * scale),
    height: few ? Math.min(row * 0.6, 190 * scale) : row * 0.8,
  };
  // Many short rows have their word beside the bar, two high ones under it.
  const start = few ? bar.width + 90 * scale : bar.width + 40 * scale + label * 4.6;
  const most = Math.max(1, ...spread.counts.map(({ count }) => count));
  return (
    <>
      {choices.map((choice, index) => {
        const y = row * (index + 0.5);
        const top = few ? y - bar.height / 2 - label * 0.7 : y - bar.height / 2;
        const right = isRight(truth, String(choice));
        const name = nameOf(choice);
        const word = few
          ? { x: 0, y: top + bar.height + label * 1.15 }
          : { x: bar.width + 40 * scale, y: y + label * 0.36 };
        return (
          <g key={choice}>
            {index > 0 ? <path class="line-string g1" d={`M0 ${row * index}H${width}`} /> : null}
            <PairBar
              bar={pairBar(spread.kind, choice)}
              x={2 * scale}
              y={top}
              width={bar.width}
              height={bar.height}
              sounded={right}
            />
            <text class="spread-label" x={word.x} y={word.y} font-size={label}>
              {name}
            </text>
            {right ? (
              <path class="line-brass g6" d={`M${word.x} ${word.y + label * 0.4}h${serifWidth(name, label * 0.94)}`} />
            ) : null}
            {hands ? (
              <HandTally
                hands={handsOn(spread, String(choice))}
                of={spread.of}
                most={most}
                x={start}
                y={y}
                width={width - start}
                scale={scale}
                height={row * 0.6}
              />
            ) : null}
          </g>
        );
      })}
    </>
  );
}

/** Choices in the pad's order. */
function choicesOf(kind: string): readonly (string | number)[] {
  return kind === 'bar-count' ? BAR_COUNTS : Object.keys(PAIR_BARS[kind as PairKind]);
}

function nameOf(choice: string | number): string {
  const words: Readonly<Record<string, string>> = questionWords.options;
  return typeof choice === 'number' ? numberWord(choice) : (words[choice] ?? choice);
}
