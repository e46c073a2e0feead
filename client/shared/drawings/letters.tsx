import type { ComponentChildren } from 'preact';
import { qualitySuffix, type Quality } from '../../../shared-theory/chords.ts';
import { SvgChord } from '../chord-text.tsx';
import { Lens } from '../music-marks.tsx';
import type { Cell } from './letter-cells.ts';

/**
 * Chord letters in two columns with one bar line between. Without a letter (its root has not been shown) the chart's
 * suffix stands alone, and the major, which has none, stands as a word; of two qualities both stand as words.
 */
export function Letters(props: {
  readonly cells: readonly Cell[];
  readonly qualities: readonly Quality[];
  readonly letter?: string | undefined;
  /** Words below the letters, by quality. */
  readonly words: Readonly<Partial<Record<Quality, string>>>;
  readonly size: number;
  readonly said?: string | null;
  readonly sounded?: string | undefined;
  readonly children?: ComponentChildren;
}) {
  const { cells, qualities, letter, size, words } = props;
  const last = cells[cells.length - 1];
  const width = cells[0] ? cells[0].width * 2 : 0;
  const plain = !letter && qualities.length <= 2;
  return (
    <>
      {last && <path d={`M${width / 2} 0V${last.y + last.height}`} class="line-ink g3" />}
      {cells.map(
        (cell, index) =>
          index > 0 && cell.x === 0 && <path key={cell.y} d={`M0 ${cell.y}H${width}`} class="line-string g1" />,
      )}
      {cells.map((cell, index) => {
        const quality = qualities[index];
        if (!quality) return null;
        const [x, y] = [cell.x + cell.width / 2, cell.y + cell.height / 2];
        const said = props.said === quality;
        const low = y + size * 0.95;
        const suffix = qualitySuffix(quality);
        return (
          <g key={quality} class={said ? 'said' : ''}>
            {props.sounded === quality && (
              <Lens from={[cell.x + 8, y]} to={[cell.x + cell.width - 8, y]} amplitude={size * 0.5} gauge={3} />
            )}
            {letter ? (
              <SvgChord symbol={letter + suffix} x={x} y={y} size={size} />
            ) : (
              <text x={x} y={y + size * 0.28} font-size={size * 0.8} text-anchor="middle" class="chord">
                {(!plain && suffix) || words[quality]}
              </text>
            )}
            {(letter || suffix) && !plain && (
              <text x={x} y={low} font-size={size * 0.34} text-anchor="middle" class="letter-words fill-ink2">
                {words[quality]}
              </text>
            )}
          </g>
        );
      })}
      {props.children}
    </>
  );
}
