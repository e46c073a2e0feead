import type { Point } from '../pencil.ts';

/** Where a fork on its side parts, and the tips of its prongs from top to bottom. `y` is the middle of its height. */
export function forkProngs(fork: {
  readonly prongs: 'one' | 'several';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}): { readonly yoke: number; readonly tips: readonly Point[] } {
  const { x, y, width, height } = fork;
  const offsets = fork.prongs === 'one' ? [0] : [-height / 2, 0, height / 2];
  return { yoke: x + width * 0.34, tips: offsets.map((offset) => [x + width, y + offset]) };
}
