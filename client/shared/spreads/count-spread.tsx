import { MOST_CHORDS } from '../../../shared-theory/questions/count/ask.ts';
import { CountBar } from '../drawings/count-bar.tsx';
import { layPiles } from './bead-layout.ts';
import { BeadPile } from './bead-row.tsx';
import { handsOn, isRight, type SpreadProps } from './spread-props.ts';

const COUNTS = Array.from({ length: MOST_CHORDS }, (_, index) => index + 1);

/** How many chords were heard: beads run on from the end of each bar of slashes, one a hand. */
export function CountSpread({ spread, truth, size, hands = true }: SpreadProps) {
  const { width, height, scale } = size;
  const row = height / COUNTS.length;
  const reach = Math.min(width * 0.46, 560 * scale);
  const bar = { x: 1.5 * scale, width: reach, height: Math.min(row * 0.72, reach * 0.16) };
  const start = bar.x + bar.width + 52 * scale;
  const counts = COUNTS.map((count) => handsOn(spread, String(count)));
  const piles = layPiles(counts, width - start - 30 * scale, Math.min(47 * scale, row * 0.9));
  return (
    <>
      {COUNTS.map((count, index) => {
        const pile = piles[index];
        const y = row * (index + 0.5);
        return (
          <g key={count}>
            <CountBar {...bar} y={y} count={count} sounded={isRight(truth, String(count))} />
            {hands && pile ? <BeadPile pile={pile} from={[start, y]} toward="right" /> : null}
          </g>
        );
      })}
    </>
  );
}
