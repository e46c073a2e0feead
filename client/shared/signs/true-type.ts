import type { Outline, Sign } from './outlines.ts';

/** Writes a TrueType font: the tables that browsers ask for and no more (OpenType specification 1.9, font file). */

const EM = 1000;
const ASCENT = 800;
const DESCENT = -200;

/** Big-endian bytes of numbers, each with its size in bytes; negative ones in two's complement. */
function bytes(...fields: readonly (readonly [value: number, size: 1 | 2 | 4])[]): number[] {
  return fields.flatMap(([value, size]) =>
    Array.from({ length: size }, (_, index) => (value >> (8 * (size - 1 - index))) & 0xff),
  );
}

const words = (...values: readonly number[]): number[] => values.flatMap((value) => bytes([value, 2]));
const longs = (...values: readonly number[]): number[] => values.flatMap((value) => bytes([value, 4]));
const padded = (data: readonly number[]): number[] => [...data, ...Array<number>((4 - (data.length % 4)) % 4).fill(0)];

function bounds(outlines: readonly Outline[]) {
  const knots = outlines.flat();
  const [xs, ys] = [knots.map(({ x }) => x), knots.map(({ y }) => y)];
  if (knots.length === 0) return { left: 0, low: 0, right: 0, top: 0 };
  return { left: Math.min(...xs), low: Math.min(...ys), right: Math.max(...xs), top: Math.max(...ys) };
}

/** One glyph: ends of the contours, a flag per point, then x and y as differences of two bytes each. */
function glyph(outlines: readonly Outline[]): number[] {
  if (outlines.length === 0) return [];
  const { left, low, right, top } = bounds(outlines);
  const knots = outlines.flat();
  let end = -1;
  const ends = outlines.map((shape) => (end += shape.length));
  const differences = (values: readonly number[]): number[] =>
    values.map((value, index) => value - (values[index - 1] ?? 0));
  return padded([
    ...words(outlines.length, left, low, right, top, ...ends, 0),
    ...knots.map((knot) => (knot.curve ? 0 : 1)),
    ...words(...differences(knots.map(({ x }) => x)), ...differences(knots.map(({ y }) => y))),
  ]);
}

/** Character map for the basic plane (format 4) and all planes (format 12); glyph 0 is the missing sign. */
function characterMap(signs: readonly Sign[]): number[] {
  const basic = [
    ...signs.map(({ code }, index) => ({ code, glyph: index + 1 })).filter(({ code }) => code < 0xffff),
    { code: 0xffff, glyph: 0 },
  ];
  const count = basic.length;
  const power = 2 ** Math.floor(Math.log2(count));
  const codes = basic.map(({ code }) => code);
  const deltas = basic.map(({ code, glyph }) => (code === 0xffff ? 1 : (glyph - code) & 0xffff));
  const format4 = words(
    4,
    16 + 8 * count,
    0,
    2 * count,
    2 * power,
    Math.log2(power),
    2 * (count - power),
    ...codes,
    0,
    ...codes,
    ...deltas,
    ...codes.map(() => 0),
  );
  const format12 = [
    ...words(12, 0),
    ...longs(16 + 12 * signs.length, 0, signs.length),
    ...signs.flatMap(({ code }, index) => longs(code, code, index + 1)),
  ];
  const start = 4 + 8 * 2;
  return [
    ...words(0, 2, 3, 1),
    ...longs(start),
    ...words(3, 10),
    ...longs(start + format4.length),
    ...format4,
    ...format12,
  ];
}

function names(family: string): number[] {
  const texts = [
    [1, family],
    [2, 'Regular'],
    [3, family],
    [4, family],
    [6, family.replaceAll(' ', '')],
  ] as const;
  const encoded = texts.map(([id, text]) => ({
    id,
    data: words(...Array.from(text, (letter) => letter.charCodeAt(0))),
  }));
  let offset = 0;
  const records = encoded.flatMap(({ id, data }) => {
    const record = words(3, 1, 0x409, id, data.length, offset);
    offset += data.length;
    return record;
  });
  return [...words(0, encoded.length, 6 + 12 * encoded.length), ...records, ...encoded.flatMap(({ data }) => data)];
}

/** Bytes of a font that holds the given signs, which must be in rising order of their codes. */
export function writeTrueType(family: string, signs: readonly Sign[]): Uint8Array {
  const glyphs: readonly Outline[][] = [[], ...signs.map(({ outlines }) => [...outlines])];
  const advances = [500, ...signs.map(({ advance }) => advance)];
  const data = glyphs.map(glyph);
  let offset = 0;
  const locations = [0, ...data.map((piece) => (offset += piece.length))];
  const { left, low, right, top } = bounds(signs.flatMap(({ outlines }) => outlines));
  const points = Math.max(...glyphs.map((outlines) => outlines.flat().length));
  const contours = Math.max(...glyphs.map((outlines) => outlines.length));
  const [first = 0, last = 0] = [signs[0]?.code, signs[signs.length - 1]?.code].map((code = 0) =>
    Math.min(code, 0xffff),
  );
  const tables: Readonly<Record<string, number[]>> = {
    'OS/2': [
      ...words(4, 430, 400, 5, 0, 650, 600, 0, 75, 650, 600, 0, 350, 50, 300, 0),
      ...Array<number>(10).fill(0),
      ...longs(0, 0, 0, 0, 0),
      ...words(0x40, first, last, ASCENT, DESCENT, 0, top, -low),
      ...longs(1, 0),
      ...words(450, 700, 0, 32, 1),
    ],
    cmap: characterMap(signs),
    glyf: data.flat(),
    head: [
      ...longs(0x10000, 0x10000, 0, 0x5f0f3cf5),
      ...words(3, EM),
      ...longs(0, 0, 0, 0),
      ...words(left, low, right, top, 0, 8, 2, 1, 0),
    ],
    hhea: [
      ...longs(0x10000),
      ...words(ASCENT, DESCENT, 0, Math.max(...advances), 0, 0, right, 1, 0, 0, 0, 0, 0, 0, 0, glyphs.length),
    ],
    hmtx: glyphs.flatMap((outlines, index) => words(advances[index] ?? 0, bounds(outlines).left)),
    loca: longs(...locations),
    maxp: [...longs(0x10000), ...words(glyphs.length, points, contours, 0, 0, 2, 0, 0, 0, 0, 0, 0, 0, 0)],
    name: names(family),
    post: longs(0x30000, 0, -75 << 16, 0, 0, 0, 0, 0),
  };
  return assemble(tables);
}

function assemble(tables: Readonly<Record<string, number[]>>): Uint8Array {
  const entries = Object.entries(tables);
  const power = 2 ** Math.floor(Math.log2(entries.length));
  let offset = 12 + 16 * entries.length;
  const directory = entries.flatMap(([tag, data]) => {
    const record = [
      ...Array.from(tag, (letter) => letter.charCodeAt(0)),
      ...longs(checksum(data), offset, data.length),
    ];
    offset += padded(data).length;
    return record;
  });
  const header = [
    ...longs(0x10000),
    ...words(entries.length, 16 * power, Math.log2(power), 16 * (entries.length - power)),
  ];
  return Uint8Array.from([...header, ...directory, ...entries.flatMap(([, data]) => padded(data))]);
}

function checksum(data: readonly number[]): number {
  const whole = padded(data);
  let sum = 0;
  for (let index = 0; index < whole.length; index += 4) {
    const [a = 0, b = 0, c = 0, d = 0] = whole.slice(index, index + 4);
    sum = (sum + ((a << 24) | (b << 16) | (c << 8) | d)) | 0;
  }
  return sum;
}
