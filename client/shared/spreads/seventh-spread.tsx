import { ASKED_SEVENTHS } from '../../../shared-theory/questions/seventh/ask.ts';
import { SeventhCell } from '../drawings/sevenths.tsx';
import { seventhSymbols } from '../seventh-symbol.ts';
import { layPiles } from './bead-layout.ts';
import { BeadPile } from './bead-row.tsx';
import { handsOn, isRight, type SpreadProps } from './spread-props.ts';

/** Which seventh was heard: beads run on from each row of the pad, one a hand. */
export function SeventhSpread({ spread, truth, size, hands = true }: SpreadProps) {
  const { width, height, scale } = size;
  const row = height / ASKED_SEVENTHS.length;
  const cell = Math.min(width * 0.44, 620 * scale);
  const start = cell + 60 * scale;
  const piles = layPiles(
    ASKED_SEVENTHS.map((seventh) => handsOn(spread, seventh)),
    width - start - 30 * scale,
    47 * scale,
  );
  return (
    <>
      {ASKED_SEVENTHS.map((seventh, index) => {
        const pile = piles[index];
        const y = row * (index + 0.5);
        return (
          <g key={seventh}>
            {index > 0 ? <path class="line-string g1" d={`M0 ${row * index}H${width}`} /> : null}
            <SeventhCell
              seventh={seventh}
              symbols={seventhSymbols(spread.asking.letter)}
              x={0}
              y={y}
              width={cell}
              height={Math.min(row, 230 * scale)}
              sounded={isRight(truth, seventh)}
            />
            {hands && pile ? <BeadPile pile={pile} from={[start, y]} toward="right" /> : null}
          </g>
        );
      })}
    </>
  );
}
