import { BeatGrid, SlotLens } from '../drawings/beat-grid.tsx';
import { layPiles } from './bead-layout.ts';
import { BeadPile } from './bead-row.tsx';
import { gridOf, handsOnOpened, layGrid, rightSlots } from './grid-hands.ts';
import type { SpreadProps } from './spread-props.ts';

/** Which slots were heard to ring open: a bead a hand on each slot that it marked. With the truth the line rings where they did. */
export function OpenedSpread({ spread, truth, size, hands = true }: SpreadProps) {
  const rows = layGrid(gridOf(spread), size);
  const right = rightSlots(truth);
  const counts = handsOnOpened(spread);
  const [first] = rows;
  const room = first ? (first.base - first.lane) * 0.92 : 0;
  const column = first?.cells[0]?.width ?? 0;
  const piles = layPiles(counts, room, Math.min(47 * size.scale, column * 0.8, room / 2));
  return (
    <BeatGrid rows={rows}>
      {rows
        .flatMap((row) => row.cells)
        .map((cell) => {
          const pile = piles[cell.slot];
          return (
            <g key={cell.slot}>
              {right.includes(cell.slot) ? (
                <SlotLens cell={cell} amplitude={Math.min(cell.width * 0.16, room * 0.1)} />
              ) : null}
              {hands && pile ? (
                <BeadPile pile={pile} from={[cell.middle, cell.base - pile.radius * 1.3]} toward="up" />
              ) : null}
            </g>
          );
        })}
    </BeatGrid>
  );
}
