import { AccentMark, AccentRing, BeatGrid } from '../drawings/beat-grid.tsx';
import { gridOf, layGrid, rightSlots } from './grid-hands.ts';
import type { SpreadProps } from './spread-props.ts';

/** How heavy each slot was heard to be: a slash as high as the class's mean. With the truth the line under each slot rings by its weight. */
export function AccentsSpread({ spread, truth, size, hands = true }: SpreadProps) {
  const rows = layGrid(gridOf(spread), size);
  const right = rightSlots(truth);
  const mean = hands ? (spread.meanGrid ?? []) : [];
  const cells = rows.flatMap((row) => row.cells);
  return (
    <BeatGrid rows={rows}>
      {cells.map((cell) => {
        const sounded = right[cell.slot];
        const heard = mean[cell.slot];
        return (
          <g key={cell.slot}>
            {typeof sounded === 'number' ? <AccentRing cell={cell} weight={sounded} /> : null}
            {typeof heard === 'number' ? <AccentMark cell={cell} weight={heard} /> : null}
          </g>
        );
      })}
    </BeatGrid>
  );
}
