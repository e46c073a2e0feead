import { point, round, wobble, type Point } from './pencil.ts';

/** Shapes of the marks as SVG paths. Lengths in the drawing's own units, y downward. */

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
