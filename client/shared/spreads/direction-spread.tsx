import { questionWords } from '../../../server/protocol/words/en.ts';
import { Stairs } from '../drawings/stairs.tsx';
import { stair } from '../drawings/stairs-layout.ts';
import { layPiles } from './bead-layout.ts';
import { BeadPile } from './bead-row.tsx';
import { serifWidth } from '../serif-width.ts';
import { handsOn, isRight, type SpreadProps } from './spread-props.ts';

const DIRECTIONS = ['up', 'same', 'down'] as const;

/** Where the bass was heard to go: beads run on from the end of each stair, one a hand. */
export function DirectionSpread({ spread, truth, size, hands = true }: SpreadProps) {
  const { width, height, scale } = size;
  const row = height / 3;
  const [word, run, gap] = [190 * scale, 330 * scale, 34 * scale];
  const start = word + run + gap;
  const rise = Math.min(96 * scale, row * 0.55);
  const counts = DIRECTIONS.map((direction) => handsOn(spread, direction));
  const piles = layPiles(counts, width - start - 20 * scale, 47 * scale);
  return (
    <>
      {DIRECTIONS.map((direction, index) => {
        const pile = piles[index];
        const y = row * (index + 0.5);
        const { to } = stair(direction, word + run / 2, y, run, rise);
        const right = isRight(truth, direction);
        const name = questionWords.options[direction];
        return (
          <g key={direction} aria-label={`${name}: ${counts[index] ?? 0}`}>
            {index > 0 ? <path class="line-string g1" d={`M0 ${row * index}H${width}`} /> : null}
            <text class="spread-word" x={0} y={y + 18 * scale} font-size={54 * scale}>
              {name}
            </text>
            {right ? <path class="line-brass g6" d={`M0 ${y + 38 * scale}h${serifWidth(name, 54 * scale)}`} /> : null}
            <Stairs direction={direction} x={word + run / 2} y={y} width={run} rise={rise} sounded={right} />
            {hands && pile ? <BeadPile pile={pile} from={[to[0] + gap, to[1]]} toward="right" /> : null}
          </g>
        );
      })}
    </>
  );
}
