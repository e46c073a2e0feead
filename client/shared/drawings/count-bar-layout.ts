import { MOST_CHORDS } from '../../../shared-theory/questions/count/ask.ts';

type Bar = { readonly x: number; readonly width: number; readonly height: number };

/** Where the number of a bar stands. */
export const countAt = ({ x, height }: Bar): number => x + height * 0.75;

/** Middles of the slashes of a bar: on the same grid in every bar, so that bars can be compared at a glance. */
export function countSlashes(bar: Bar, count: number): readonly number[] {
  const first = countAt(bar) + bar.height * 1.2;
  const pitch = Math.min(bar.height * 1.04, (bar.x + bar.width - bar.height * 0.6 - first) / (MOST_CHORDS - 1));
  return Array.from({ length: count }, (_, index) => first + index * pitch);
}
