/** Outlines of Hearsay Signs, drawn for this house. A thousand units to the em, y upward, base line at 0. */

/** A corner or, with `curve`, the control point of a quadratic curve. */
export type Knot = { readonly x: number; readonly y: number; readonly curve?: true };
export type Outline = readonly Knot[];
export type Sign = {
  readonly name: string;
  readonly code: number;
  readonly advance: number;
  readonly outlines: readonly Outline[];
};

/** Reads `x y` corners and `(x y)` controls, clockwise for ink and anticlockwise for a hole. */
function outline(text: string): Outline {
  return Array.from(text.matchAll(/(\()?(-?\d+) (-?\d+)\)?/g), ([, curve, x, y]) => ({
    x: Number(x),
    y: Number(y),
    ...(curve ? { curve: true as const } : {}),
  }));
}

const box = (left: number, low: number, right: number, top: number): Outline =>
  outline(`${left} ${low} ${left} ${top} ${right} ${top} ${right} ${low}`);

/** A straight line of the given thickness between two points. */
function bar(x1: number, y1: number, x2: number, y2: number, thickness: number): Outline {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const [nx, ny] = [((y1 - y2) / length) * (thickness / 2), ((x2 - x1) / length) * (thickness / 2)];
  const corner = (x: number, y: number): Knot => ({ x: Math.round(x), y: Math.round(y) });
  return [corner(x1 + nx, y1 + ny), corner(x2 + nx, y2 + ny), corner(x2 - nx, y2 - ny), corner(x1 - nx, y1 - ny)];
}

/** A circle of eight quadratic arcs; `hole` turns it the other way round. */
function circle(cx: number, cy: number, radius: number, hole = false): Outline {
  const knots = Array.from({ length: 16 }, (_, index): Knot => {
    const angle = (-index * Math.PI) / 8;
    const reach = index % 2 === 0 ? radius : radius / Math.cos(Math.PI / 8);
    const [x, y] = [Math.round(cx + reach * Math.cos(angle)), Math.round(cy + reach * Math.sin(angle))];
    return index % 2 === 0 ? { x, y } : { x, y, curve: true };
  });
  return hole ? knots.toReversed() : knots;
}

const shift = (shape: Outline, by: number): Outline => shape.map((knot) => ({ ...knot, x: knot.x + by }));

/** Accidentals stand a little higher than capitals, as in print. */
const GROWN = 1.16;
const grown = (shapes: readonly Outline[]): readonly Outline[] =>
  shapes.map((shape) =>
    shape.map((knot) => ({ ...knot, x: Math.round(knot.x * GROWN), y: Math.round(knot.y * GROWN) })),
  );

const FLAT: readonly Outline[] = [
  outline('44 780 108 780 108 392 (158 446) 214 446 (304 446) 304 342 (304 226) 196 122 (124 54) 44 -14'),
  outline('108 318 108 78 (150 114) 182 166 (228 240) 228 316 (228 374) 186 374 (148 374) 108 318'),
];
const SHARP: readonly Outline[] = [
  box(128, -96, 182, 694),
  box(266, -46, 320, 744),
  outline('52 398 52 494 396 570 396 474'),
  outline('52 130 52 226 396 302 396 206'),
];
const NATURAL: readonly Outline[] = [
  box(60, 112, 114, 780),
  box(258, -126, 312, 542),
  outline('60 402 60 498 312 554 312 458'),
  outline('60 100 60 196 312 252 312 156'),
];
const DOUBLE_SHARP: readonly Outline[] = [
  bar(90, 170, 350, 430, 66),
  bar(90, 430, 350, 170, 66),
  ...[
    [60, 140],
    [60, 346],
    [266, 140],
    [266, 346],
  ].map(([x = 0, y = 0]) => box(x, y, x + 114, y + 114)),
];

export const SIGNS: readonly Sign[] = [
  { name: 'degree', code: 0xb0, advance: 350, outlines: [circle(175, 590, 132), circle(175, 590, 74, true)] },
  {
    name: 'o-slash',
    code: 0xf8,
    advance: 490,
    outlines: [circle(245, 300, 186), circle(245, 300, 122, true), bar(72, 92, 418, 508, 56)],
  },
  {
    name: 'triangle',
    code: 0x25b3,
    advance: 570,
    outlines: [outline('24 40 285 600 546 40'), outline('128 104 442 104 285 440')],
  },
  { name: 'flat', code: 0x266d, advance: 383, outlines: grown(FLAT) },
  { name: 'natural', code: 0x266e, advance: 432, outlines: grown(NATURAL) },
  { name: 'sharp', code: 0x266f, advance: 520, outlines: grown(SHARP) },
  { name: 'head-x', code: 0xe0a9, advance: 560, outlines: [bar(70, 90, 490, 510, 76), bar(70, 510, 490, 90, 76)] },
  { name: 'slash', code: 0xe101, advance: 500, outlines: [outline('40 0 326 650 482 650 196 0')] },
  { name: 'accent', code: 0xe4a0, advance: 620, outlines: [bar(60, 470, 560, 310, 66), bar(60, 130, 560, 290, 66)] },
  {
    name: 'down-bow',
    code: 0xe610,
    advance: 560,
    outlines: [box(60, 440, 500, 590), box(60, 40, 116, 590), box(444, 40, 500, 590)],
  },
  { name: 'up-bow', code: 0xe612, advance: 480, outlines: [bar(72, 600, 240, 40, 64), bar(408, 600, 240, 40, 64)] },
  { name: 'double-sharp', code: 0x1d12a, advance: 510, outlines: grown(DOUBLE_SHARP) },
  {
    name: 'double-flat',
    code: 0x1d12b,
    advance: 660,
    outlines: grown([...FLAT, ...FLAT.map((shape) => shift(shape, 238))]),
  },
];
