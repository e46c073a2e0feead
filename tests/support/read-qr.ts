import jsQR from 'jsqr';

/** The package is CommonJS with a `default` of its own; loaders differ in which of the two they hand out. */
const read = 'default' in jsQR ? jsQR.default : jsQR;

/** Text of the square code in an RGBA picture, read dark on light as phones do; undefined where there is none. */
export function readQr(pixels: Uint8ClampedArray, width: number, height: number): string | undefined {
  return read(pixels, width, height, { inversionAttempts: 'dontInvert' })?.data;
}
