import type { Point } from '../pencil.ts';

export type Rect = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** Two low strings of a guitar neck, flat as on the host screen or upright like a grown chord box. */
export type NeckLayout = {
  readonly ground: Rect;
  /** null on a page that begins above the first fret. */
  readonly nut: Rect | null;
  /** null where there is no capo, or not on this page. */
  readonly capo: CapoLayout | null;
  readonly frets: readonly (readonly [Point, Point])[];
  readonly strings: readonly { readonly string: 5 | 6; readonly from: Point; readonly to: Point }[];
  readonly inlays: readonly { readonly at: Point; readonly r: number }[];
  /** Where a string's number stands, beyond the open place. */
  readonly names: readonly { readonly string: 5 | 6; readonly at: Point }[];
  /** Where the numbers of the dotted frets stand, beside the neck. */
  readonly numbers: readonly { readonly fret: number; readonly at: Point }[];
  /** Where a finger stands: in the middle of its fret; fret 0 before the nut. */
  readonly place: (string: 5 | 6, fret: number) => Point;
  /** What a thumb may hit for that place. */
  readonly zone: (string: 5 | 6, fret: number) => Rect;
};

/** A capo: its bar over all strings, and what lies behind it, where nothing is played. */
export type CapoLayout = {
  readonly fret: number;
  readonly bar: Rect;
  readonly behind: Rect;
  /** Where its words stand between the strings: upright, on the bar; flat, behind it, where no bead hides them. */
  readonly words: Point;
  readonly anchor: 'start' | 'middle' | 'end';
};

export type NeckOptions = {
  readonly flat: boolean;
  /** Left-handed: upright, string 6 lies right; flat, the nut lies right. */
  readonly mirrored?: boolean;
  /** The neck's rectangle with its open row (before the nut) taken off. */
  readonly ground: Rect;
  /** First and last fret drawn; they fill the ground's length in true spacing. */
  readonly from: number;
  readonly to: number;
  /** Length of the open row before the nut, or before the first fret drawn below a capo; 0 on a page that begins higher up. */
  readonly open: number;
  /** Fret of a capo, 0 for none: there the open strings are played. */
  readonly capo?: number;
  /** How far the strings lie from the neck's edges, as a share of its breadth. */
  readonly edge?: number;
  /** Thickness of the nut. */
  readonly nut?: number;
};

const INLAYS: readonly number[] = [3, 5, 7, 9, 12, 15];

/** Thickness of a capo's bar, and how far it stands off its fret, as shares of that fret's length. */
const BAR = { thick: 0.56, off: 0.07 } as const;
/** What lies behind a capo is veiled with the numbers beside it. */
const BEHIND = 30;
/** How far the bar reaches over each edge of the neck, as a share of its breadth. */
const OVERHANG = 0.022;

/** Nut to fret `n` where nut to fret 12 is 1: equal temperament halves the string each twelve frets. */
export const fretDistance = (n: number): number => 2 * (1 - 2 ** (-n / 12));

/** Lays the neck along its own axis, then turns it into the picture. */
export function layNeck(options: NeckOptions): NeckLayout {
  const { flat, ground, from, to, open, capo = 0, edge = 0.245, nut = 10 } = options;
  const mirrored = options.mirrored === true;
  const length = flat ? ground.width : ground.height;
  const breadth = flat ? ground.height : ground.width;
  const start = fretDistance(from - 1);
  const scale = length / (fretDistance(to) - start);
  const along = (fret: number): number => (fretDistance(fret) - start) * scale;

  // Flat, string 6 lies below string 5 as a seated player looks down on it; upright, left of it as in a chord box.
  const near = breadth * edge;
  const across = (string: 5 | 6): number => (flat === (string === 6) ? breadth - near : near);
  const turn = (a: number, c: number): Point => {
    const [u, v] = flat ? [mirrored ? length - a : a, c] : [mirrored ? breadth - c : c, a];
    return [ground.x + u, ground.y + v];
  };
  const box = (a: number, c: number, da: number, dc: number): Rect => {
    const [x1, y1] = turn(a, c);
    const [x2, y2] = turn(a + da, c + dc);
    return { x: Math.min(x1, x2), y: Math.min(y1, y2), width: Math.abs(x2 - x1), height: Math.abs(y2 - y1) };
  };

  const drawn = Array.from({ length: to - from + 1 }, (_, index) => from + index);
  const cell = along(capo) - along(capo - 1);
  const bar = along(capo) - cell * (BAR.off + BAR.thick);
  const onCapo = bar + (cell * BAR.thick) / 2;
  const middle = (fret: number): number => {
    if (fret === 0) return -open / 2;
    return fret === capo ? onCapo : (along(fret - 1) + along(fret)) / 2;
  };
  const dotted = drawn.filter((fret) => INLAYS.includes(fret) && fret > capo);
  const inlay = Math.min(breadth * 0.03, length * 0.03) + 1;
  const zoneStart = (string: 5 | 6): number => (across(string) < breadth / 2 ? 0 : breadth / 2);

  return {
    ground,
    nut: open > 0 && from === 1 ? box(-nut, -0.014 * breadth, nut, 1.028 * breadth) : null,
    capo:
      capo >= from && capo <= to
        ? {
            fret: capo,
            bar: box(bar, -OVERHANG * breadth, cell * BAR.thick, (1 + 2 * OVERHANG) * breadth),
            words: turn(flat ? bar - 0.06 * breadth : onCapo, breadth / 2),
            anchor: flat ? (mirrored ? 'start' : 'end') : 'middle',
            behind: box(-open, -BEHIND, bar + open, breadth + 2 * BEHIND),
          }
        : null,
    frets: drawn.slice(0, -1).map((fret) => [turn(along(fret), 0), turn(along(fret), breadth)]),
    strings: ([6, 5] as const).map((string) => ({
      string,
      from: turn(open > 0 ? -open : 0, across(string)),
      to: turn(length, across(string)),
    })),
    inlays: dotted.flatMap((fret) => {
      const shares = fret === 12 ? [0.34, 0.66] : [0.5];
      return shares.map((share) => ({ at: turn(middle(fret), breadth * share), r: inlay }));
    }),
    names: ([6, 5] as const).map((string) => ({ string, at: turn(-open, across(string)) })),
    numbers: dotted.map((fret) => ({ fret, at: turn(middle(fret), breadth + 12) })),
    place: (string, fret) => turn(middle(fret), across(string)),
    zone: (string, fret) =>
      fret === 0
        ? box(-open, zoneStart(string), open, breadth / 2)
        : box(along(fret - 1), zoneStart(string), along(fret) - along(fret - 1), breadth / 2),
  };
}

/**
 * Pages of frets for a neck of the given length, each as its first and last fret: one page if the narrowest fret is then
 * still `least` long, else pages of seven at most on which it is. The first begins on fret `first`.
 */
export function neckPages(length: number, least: number, last = 12, first = 1): readonly (readonly [number, number])[] {
  const fits = (from: number, to: number): boolean =>
    (length * (fretDistance(to) - fretDistance(to - 1))) / (fretDistance(to) - fretDistance(from - 1)) >= least;
  if (fits(first, last)) return [[first, last]];
  const pages: (readonly [number, number])[] = [];
  let from = first;
  while (from <= last) {
    let to = from;
    while (to < last && to - from < 6 && fits(from, to + 1)) to += 1;
    pages.push([from, to]);
    from = to + 1;
  }
  return pages;
}
