import { point, round, type Point } from '../pencil.ts';

/** Point at an angle in degrees, clockwise from twelve o'clock. */
export function polar(cx: number, cy: number, radius: number, degrees: number): Point {
  const angle = ((degrees - 90) * Math.PI) / 180;
  return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
}

/** Circle of fifths: twelve places, C on top, sharps clockwise. */
export type Peg = {
  /** Key as an answer: tonic's pitch class and mode. */
  readonly id: string;
  /** 0 on top to 11, clockwise; a relative minor stands where its major does. */
  readonly place: number;
  readonly at: Point;
};

export type CircleLayout = {
  readonly cx: number;
  readonly cy: number;
  readonly radius: number;
  /** Radius of the inner circle, on which neighbours join. */
  readonly inner: number;
  readonly majors: readonly Peg[];
  /** Empty where only major keys are asked. */
  readonly minors: readonly Peg[];
};

/** Letters on the pegs from C clockwise: at six signs against six the usual spelling. Minors with their `m`. */
const LETTERS = {
  M: ['C', 'G', 'D', 'A', 'E', 'B', 'F#', 'Db', 'Ab', 'Eb', 'Bb', 'F'],
  m: ['Am', 'Em', 'Bm', 'F#m', 'C#m', 'G#m', 'D#m', 'Bbm', 'Fm', 'Cm', 'Gm', 'Dm'],
} as const;

/** Symbol of a key's home chord, in ASCII: `7M` is `G`, `4m` `Em`. */
export function keyLabel(id: string): string {
  const minor = id.endsWith('m');
  const tonic = Number.parseInt(id, 10) + (minor ? 3 : 0);
  return LETTERS[minor ? 'm' : 'M'][(tonic * 7) % 12] ?? id;
}

/** Name of a key in ASCII: `7M` is `G major`, `4m` `E minor`. */
export const keyName = (id: string): string =>
  id.endsWith('m') ? `${keyLabel(id).slice(0, -1)} minor` : `${keyLabel(id)} major`;

/** Peg's length along the circle and across it, as shares of the radius. */
const PEG = [0.4, 0.33] as const;
const MINOR_PEG = [0.32, 0.26] as const;
const MINOR_RADIUS = 0.655;

/** Lays the pegs on a circle of the given radius; with `minors` a second ring inside holds the relative minors. */
export function layCircle(cx: number, cy: number, radius: number, minors = false): CircleLayout {
  const ring = (share: number, id: (place: number) => string): Peg[] =>
    Array.from({ length: 12 }, (_, place) => ({
      id: id(place),
      place,
      at: polar(cx, cy, radius * share, place * 30),
    }));
  return {
    cx,
    cy,
    radius,
    inner: radius * (minors ? 0.46 : 0.58),
    majors: ring(1, (place) => `${(place * 7) % 12}M`),
    minors: minors ? ring(MINOR_RADIUS, (place) => `${(place * 7 + 9) % 12}m`) : [],
  };
}

/** Outline of a peg: a rounded block that faces the centre. */
export function pegPath({ cx, cy, radius }: CircleLayout, peg: Peg): string {
  const minor = peg.id.endsWith('m');
  const [length, depth] = minor ? MINOR_PEG : PEG;
  const [w, h, r] = [(length * radius) / 2, (depth * radius) / 2, 0.145 * radius * (minor ? 0.75 : 1)];
  const middle = radius * (minor ? MINOR_RADIUS : 1);
  const turn = (x: number, y: number): Point => {
    const angle = (peg.place * 30 * Math.PI) / 180;
    const [u, v] = [x, y - middle];
    return [cx + u * Math.cos(angle) - v * Math.sin(angle), cy + u * Math.sin(angle) + v * Math.cos(angle)];
  };
  const corner = (x: number, y: number): string => point(turn(x, y));
  return (
    `M${corner(-w + r, -h)}L${corner(w - r, -h)}Q${corner(w, -h)} ${corner(w, -h + r)}` +
    `L${corner(w, h - r)}Q${corner(w, h)} ${corner(w - r, h)}L${corner(-w + r, h)}` +
    `Q${corner(-w, h)} ${corner(-w, h - r)}L${corner(-w, -h + r)}Q${corner(-w, -h)} ${corner(-w + r, -h)}z`
  );
}

/** The post that carries a place's pegs, from the inner circle outward. */
export function postPath({ cx, cy, radius, inner }: CircleLayout, place: number): string {
  const outer = radius * (1 - PEG[1] / 2);
  return `M${point(polar(cx, cy, inner, place * 30))}L${point(polar(cx, cy, outer, place * 30))}`;
}

/** Runs of neighbouring places, each as its first place and how many steps it goes clockwise; lone places have none. */
export function neighbourRuns(places: readonly number[]): readonly { readonly from: number; readonly steps: number }[] {
  const held = new Set(places);
  if (held.size === 12) return [{ from: 0, steps: 12 }];
  return [...held]
    .filter((place) => !held.has((place + 11) % 12) && held.has((place + 1) % 12))
    .map((from) => {
      let steps = 1;
      while (held.has((from + steps + 1) % 12)) steps += 1;
      return { from, steps };
    });
}

/** Arc on the inner circle that joins a run of neighbours. */
export function joinPath(
  { cx, cy, inner }: CircleLayout,
  run: { readonly from: number; readonly steps: number },
): string {
  const arc = (from: number, steps: number): string => {
    const to = polar(cx, cy, inner, (from + steps) * 30);
    return `A${round(inner)} ${round(inner)} 0 ${steps > 6 ? 1 : 0} 1 ${point(to)}`;
  };
  const start = `M${point(polar(cx, cy, inner, run.from * 30))}`;
  // An arc that ends where it began is not drawn: a full circle takes two halves.
  return run.steps < 12 ? start + arc(run.from, run.steps) : start + arc(run.from, 6) + arc(run.from + 6, 6);
}

/** Places for beads outward of a peg, two abreast, first to last. `pitch` is the distance of two beads. */
export function beadsBeside(
  { cx, cy, radius }: CircleLayout,
  peg: Peg,
  count: number,
  pitch: number,
): readonly Point[] {
  const angle = peg.place * 30;
  return Array.from({ length: count }, (_, index) => {
    const [row, side] = [Math.floor(index / 2), index % 2 === 0 ? -0.5 : 0.5];
    const alone = index === count - 1 && count % 2 === 1 ? 0 : side;
    const distance = radius * (1 + PEG[1] / 2) + pitch * (1.05 + row);
    const [x, y] = polar(cx, cy, distance, angle);
    const [tx, ty] = polar(0, 0, pitch * alone, angle + 90);
    return [x + tx, y + ty];
  });
}
