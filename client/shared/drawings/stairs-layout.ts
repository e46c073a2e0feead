import { round, type Point } from '../pencil.ts';

export type Stair = {
  /** Where the bass starts and where it arrives. */
  readonly from: Point;
  readonly to: Point;
  readonly path: string;
};

/** A step up, a step down or a level line, centred on (cx, cy), `width` long with the given rise. */
export function stair(direction: 'up' | 'down' | 'same', cx: number, cy: number, width: number, rise: number): Stair {
  const half = direction === 'up' ? rise / 2 : direction === 'down' ? -rise / 2 : 0;
  const [left, right] = [cx - width / 2, cx + width / 2];
  return {
    from: [left, cy + half],
    to: [right, cy - half],
    path: `M${round(left)} ${round(cy + half)}H${round(cx)}V${round(cy - half)}H${round(right)}`,
  };
}
