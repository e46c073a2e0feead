import { serifWidth } from '../shared/serif-width.ts';

/** The picture in drawing units: 16 to a rem; 1920 × 1080 on a 16:9 projector at any resolution. */
export type Frame = { readonly width: number; readonly height: number };

const UNITS_PER_REM = 16;

/** Margin left and right of the picture, in drawing units. */
export const MARGIN = 112;

/**
 * The picture of a window. A rem is 1/67.5 of the height; in windows narrower than about 3:2 it follows the width,
 * so that nothing is cut and the height left over goes to the drawings. `host.css` holds the same rule.
 */
export function frameOf(pixelsWide: number, pixelsHigh: number): Frame {
  const rem = Math.min(pixelsHigh / 67.5, pixelsWide / 100);
  return { width: (pixelsWide / rem) * UNITS_PER_REM, height: (pixelsHigh / rem) * UNITS_PER_REM };
}

/** How a question is set: its size in drawing units, and in how many lines. */
export type Setting = { readonly size: number; readonly lines: number };

/** The largest of the sizes at which a question fits into `most` lines of the width; the smallest where none does. */
export function setQuestion(text: string, width: number, most: number, sizes: readonly [number, ...number[]]): Setting {
  const linesAt = (size: number): number => linesOf(text, size, width);
  const size = sizes.find((size) => linesAt(size) <= most) ?? Math.min(...sizes);
  return { size, lines: linesAt(size) };
}

/** Height that the lines after the first take. */
export function moreLines({ size, lines }: Setting): number {
  return (lines - 1) * size * 1.04;
}

/** Pictures narrower than 16:10 leave out what can be spared. */
export function isNarrow(frame: Frame): boolean {
  return frame.width < 1720;
}

function linesOf(text: string, size: number, width: number): number {
  let lines = 1;
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && serifWidth(longer, size) > width) {
      lines += 1;
      line = word;
    } else line = longer;
  }
  return lines;
}
