import { questionWords } from '../../../server/protocol/words/en.ts';
import { Fork } from '../drawings/fork.tsx';
import { layPiles } from './bead-layout.ts';
import { BeadPile } from './bead-row.tsx';
import { handsOn, isRight, type SpreadProps } from './spread-props.ts';

const ANSWERS = ['one', 'several'] as const;

/** Whether one key was thought to own the chords, or several: beads run on from the middle prong of each fork, one a hand. */
export function OneOrSeveralSpread({ spread, truth, size, hands = true }: SpreadProps) {
  const { width, height, scale } = size;
  const row = height / ANSWERS.length;
  const fork = { width: Math.min(width * 0.36, 560 * scale), height: Math.min(row * 0.44, 110 * scale) };
  const start = fork.width + 56 * scale;
  const piles = layPiles(
    ANSWERS.map((answer) => handsOn(spread, answer)),
    width - start - 30 * scale,
    47 * scale,
  );
  return (
    <>
      <path class="line-string g1" d={`M0 ${row}H${width}`} />
      {ANSWERS.map((answer, index) => {
        const pile = piles[index];
        const y = row * (index + 0.42);
        return (
          <g key={answer}>
            <Fork
              prongs={answer}
              x={fork.height * 0.14}
              y={y}
              width={fork.width}
              height={fork.height}
              sounded={isRight(truth, answer)}
            />
            <text class="spread-label" x={0} y={y + fork.height / 2 + 44 * scale} font-size={36 * scale}>
              {questionWords.options[answer]}
            </text>
            {hands && pile ? <BeadPile pile={pile} from={[start, y]} toward="right" /> : null}
          </g>
        );
      })}
    </>
  );
}
