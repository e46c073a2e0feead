/** The hand that draws: points, and curves that a pencil would leave. */

export type Point = readonly [x: number, y: number];

/** Two decimals are a hundredth of a pixel: enough, and short. */
export const round = (value: number): number => Math.round(value * 100) / 100;

export const point = ([x, y]: Point): string => `${round(x)} ${round(y)}`;

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
function smoothPath(points: readonly Point[]): string {
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
