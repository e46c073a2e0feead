import type { Point } from '../pencil.ts';
import type { Rect } from './neck-layout.ts';

/** A piece of the distance line in true spacing: scale ticks on one edge, those in between on the other. */
export type DistanceLayout = {
  readonly ground: Rect;
  readonly lying: boolean;
  /** Length of a semitone. */
  readonly pitch: number;
  /** Where the line is held: a block at its end, or across it. */
  readonly home: Rect;
  /** Places on this piece, from low to high, in semitones from home. */
  readonly places: readonly number[];
  /** Where a place's tick leaves the edge, and where it ends. */
  readonly tick: (semitones: number) => readonly [Point, Point];
  /** Middle of a place's number. */
  readonly number: (semitones: number) => Point;
  /** The place across the whole line, from the edge of the scale ticks to the other. */
  readonly across: (semitones: number) => readonly [Point, Point];
  /** What a thumb may hit for a place: to the middle between it and the next ticks on its own edge. */
  readonly zone: (semitones: number) => Rect;
};

export type DistanceOptions = {
  /** The line with its block of home. */
  readonly ground: Rect;
  /** Lying it climbs to the right, its scale ticks on the upper edge; standing it climbs upward, its scale ticks at the left. */
  readonly lying: boolean;
  readonly from: number;
  readonly to: number;
  /** Length of the block of home. */
  readonly home: number;
};

const IN_BETWEEN: readonly number[] = [1, 3, 6, 8, 10];

/** Whether a place lies between two degrees of the major scale. */
export const isBetween = (semitones: number): boolean => IN_BETWEEN.includes((semitones + 24) % 12);

/** What the line goes on beyond its last ticks, in semitones: enough for a thumb. */
const END = 0.75;

/** Lays a piece of the distance line; where it begins or ends at home, the block of home is that end. */
export function layDistance({ ground, lying, from, to, home }: DistanceOptions): DistanceLayout {
  const [length, breadth] = lying ? [ground.width, ground.height] : [ground.height, ground.width];
  const [foot, head] = [from === 0 ? home : 0, to === 0 ? home : 0];
  const pitch = (length - foot - head) / (to - from + 2 * END);
  const along = (semitones: number): number => foot + (semitones - from + END) * pitch;
  const turn = (a: number, c: number): Point =>
    lying ? [ground.x + a, ground.y + c] : [ground.x + c, ground.y + length - a];
  const box = (a1: number, a2: number, c1: number, c2: number): Rect => {
    const [[x1, y1], [x2, y2]] = [turn(a1, c1), turn(a2, c2)];
    return { x: Math.min(x1, x2), y: Math.min(y1, y2), width: Math.abs(x2 - x1), height: Math.abs(y2 - y1) };
  };
  const places = Array.from({ length: to - from + 1 }, (_, index) => from + index);
  const onEdge = (between: boolean): readonly number[] => places.filter((place) => isBetween(place) === between);
  const [scaleTick, tick] = lying ? [0.17, 0.14] : [0.22, 0.145];
  const [scaleNumber, number] = lying ? [0.32, 0.72] : [0.375, 0.735];

  return {
    ground,
    lying,
    pitch,
    home:
      from === 0
        ? box(0, home, 0, breadth)
        : to === 0
          ? box(length - home, length, 0, breadth)
          : box(along(0) - home / 2, along(0) + home / 2, 0, breadth),
    places,
    tick: (semitones) => {
      const a = along(semitones);
      return isBetween(semitones)
        ? [turn(a, breadth), turn(a, breadth * (1 - tick))]
        : [turn(a, 0), turn(a, breadth * scaleTick)];
    },
    number: (semitones) => turn(along(semitones), breadth * (isBetween(semitones) ? number : scaleNumber)),
    across: (semitones) => [turn(along(semitones), 0), turn(along(semitones), breadth)],
    zone: (semitones) => {
      const between = isBetween(semitones);
      const edge = onEdge(between);
      const at = edge.indexOf(semitones);
      const [below, above] = [edge[at - 1], edge[at + 1]];
      // The block of home is home's own; beyond the open end as much is free.
      const start = below === undefined ? (between ? foot : foot - home) : along((below + semitones) / 2);
      const end = above === undefined ? length + (between ? -head : home - head) : along((above + semitones) / 2);
      return between ? box(start, end, breadth / 2, breadth) : box(start, end, 0, breadth / 2);
    },
  };
}
