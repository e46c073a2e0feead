/** Shapes of the marks as SVG paths. Lengths in the drawing's own units, y downward. */

export type Point = readonly [x: number, y: number];

/** Two decimals are a hundredth of a pixel: enough, and short. */
export const round = (value: number): number => Math.round(value * 100) / 100;

export const point = ([x, y]: Point): string => `${round(x)} ${round(y)}`;

/** Point at an angle in degrees, clockwise from twelve o'clock. */
export function polar(cx: number, cy: number, radius: number, degrees: number): Point {
  const angle = ((degrees - 90) * Math.PI) / 180;
  return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
}

/** Numbers from -1 to 1 that are the same at every drawing: a hand that is never twice different. */
export function wobble(seed: number): () => number {
  let state = (seed * 2654435761) >>> 0 || 1;
  return () => {
    state = (state ^ (state << 13)) >>> 0;
    state = (state ^ (state >>> 17)) >>> 0;
    state = (state ^ (state << 5)) >>> 0;
    return state / 2147483648 - 1;
  };
}

/** A curve through all points (Catmull-Rom as cubic Béziers). */
export function smoothPath(points: readonly Point[]): string {
  const at = (index: number): Point => points[Math.max(0, Math.min(points.length - 1, index))] ?? [0, 0];
  let path = `M${point(at(0))}`;
  for (let index = 0; index < points.length - 1; index += 1) {
    const [before, from, to, after] = [at(index - 1), at(index), at(index + 1), at(index + 2)];
    const first: Point = [from[0] + (to[0] - before[0]) / 6, from[1] + (to[1] - before[1]) / 6];
    const second: Point = [to[0] - (after[0] - from[0]) / 6, to[1] - (after[1] - from[1]) / 6];
    path += `C${point(first)} ${point(second)} ${point(to)}`;
  }
  return path;
}

/** One and a sixth turns of a pencil round a centre, spiralling out by 2.6 line widths. */
export function pencilRingPath(cx: number, cy: number, rx: number, ry: number, line = 3.6, seed = 7): string {
  const hand = wobble(seed);
  const turn = 420;
  const points: Point[] = [];
  for (let swept = 0; swept <= turn; swept += 28) {
    const out = 2.6 * line * (swept / turn);
    const angle = ((swept + 205) * Math.PI) / 180;
    points.push([cx + (rx + out) * Math.cos(angle) + hand() * 0.5, cy + (ry + out) * Math.sin(angle) + hand() * 0.5]);
  }
  return smoothPath(points);
}

/** Leaning parallelogram of the given height, centred; width 0.24 and lean 0.44 of the height unless told. */
export function slashPath(cx: number, cy: number, height: number, width = 0.24): string {
  const [thick, lean] = [width * height, 0.44 * height];
  const left = cx - (thick + lean) / 2;
  return `M${round(left)} ${round(cy + height / 2)}l${round(lean)} ${-round(height)}h${round(thick)}l${-round(lean)} ${round(height)}z`;
}

/** A string that rings between two nodes: two quadratics with their controls at mid-length. */
export function lensPath(from: Point, to: Point, amplitude: number): string {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy) || 1;
  const [mx, my] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const [nx, ny] = [(-dy / length) * amplitude * 2, (dx / length) * amplitude * 2];
  return `M${point(from)}Q${point([mx + nx, my + ny])} ${point(to)}Q${point([mx - nx, my - ny])} ${point(from)}z`;
}

/** Amplitude of the lens on string 1 to 6 where strings lie `gap` apart. */
export const lensAmplitude = (string: number, gap: number): number => (0.1 + 0.032 * string) * gap;

/** A plectrum with its tip at (x, y), pointing down. */
export function plectrumPath(x: number, y: number, height: number): string {
  const [w, h] = [0.45 * height, height];
  return (
    `M${point([x, y])}C${point([x - 0.3 * w, y - 0.12 * h])} ${point([x - w, y - 0.48 * h])} ${point([x - w, y - 0.76 * h])}` +
    `C${point([x - w, y - 1.08 * h])} ${point([x + w, y - 1.08 * h])} ${point([x + w, y - 0.76 * h])}` +
    `C${point([x + w, y - 0.48 * h])} ${point([x + 0.3 * w, y - 0.12 * h])} ${point([x, y])}z`
  );
}

/** Gates of five on an even grid: strokes as line ends, and dots for hands that are missing. */
export function tallyLayout(
  hands: number,
  of: number,
  gap: number,
  height: number,
): { readonly strokes: readonly (readonly [Point, Point])[]; readonly dots: readonly Point[]; readonly width: number } {
  const strokes: (readonly [Point, Point])[] = [];
  const dots: Point[] = [];
  const total = Math.max(hands, of);
  for (let index = 0; index < total; index += 1) {
    const place = index % 5;
    const left = Math.floor(index / 5) * 5.3 * gap;
    const x = left + place * gap;
    if (index >= hands) dots.push([x, height - 0.06 * height]);
    else {
      const hand = wobble(index + 11);
      const [lean, top, low] = [hand() * 0.09 * gap, hand() * 0.03 * height, hand() * 0.03 * height];
      strokes.push(
        place === 4
          ? [
              [left - 0.42 * gap, 0.84 * height + low],
              [left + 3.46 * gap, 0.16 * height + top],
            ]
          : [
              [x + lean, top],
              [x - lean, height + low],
            ],
      );
    }
  }
  const last = Math.max(total - 1, 0);
  return { strokes, dots, width: Math.floor(last / 5) * 5.3 * gap + (last % 5) * gap };
}
