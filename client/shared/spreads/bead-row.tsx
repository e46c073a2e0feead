import type { Point } from '../pencil.ts';
import { Bead } from '../music-marks.tsx';
import type { Pile } from './bead-layout.ts';

/** A pile of beads from a place on in one direction, first bead on the place; its number beyond it where beads stand for many. */
export function BeadPile({
  pile,
  from,
  toward,
  halo,
  onInk = false,
}: {
  readonly pile: Pile;
  readonly from: Point;
  readonly toward: 'right' | 'up' | 'down';
  readonly halo?: 'paper' | 'shade';
  /** What the pile stands on is ink itself: every bead has a halo. */
  readonly onInk?: boolean;
}) {
  const [dx, dy] = toward === 'right' ? [1, 0] : toward === 'up' ? [0, -1] : [0, 1];
  const [x, y] = from;
  const beyond = pile.radius * (toward === 'right' ? 1.8 : 2.2);
  const size = pile.radius * 2.2;
  return (
    <>
      {Array.from({ length: pile.beads }, (_, index) => (
        <Bead
          key={index}
          x={x + dx * index * pile.pitch}
          y={y + dy * index * pile.pitch}
          r={pile.radius}
          {...(halo && (index === 0 || onInk) ? { halo } : {})}
        />
      ))}
      {pile.number === null ? null : (
        <text
          class="spread-count"
          x={x + dx * beyond}
          y={y + dy * beyond + 0.35 * size}
          font-size={size}
          text-anchor={toward === 'right' ? 'start' : 'middle'}
        >
          {pile.number}
        </text>
      )}
    </>
  );
}
