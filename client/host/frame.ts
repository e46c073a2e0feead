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

/** Width of Besley 600 in em, a letter on average: measured over English prompts. */
const LETTER_WIDTH = 0.51;

/**
 * Size of a question in drawing units: the largest of the sizes at which it fits into `lines` lines of the width;
 * the smallest where none fits.
 */
export function questionSize(text: string, width: number, lines: number, sizes: readonly number[]): number {
  const fits = sizes.find((size) => linesOf(text, width / (size * LETTER_WIDTH)) <= lines);
  return fits ?? sizes.at(-1) ?? 85;
}

function linesOf(text: string, lettersPerLine: number): number {
  let lines = 1;
  let room = lettersPerLine;
  for (const word of text.split(' ')) {
    if (room < lettersPerLine && word.length + 1 > room) {
      lines += 1;
      room = lettersPerLine;
    }
    room -= word.length + 1;
  }
  return lines;
}
