import type { ComponentChildren } from 'preact';
import { SvgNumeral } from '../chord-text.tsx';
import { BarLine, Lens } from '../music-marks.tsx';

/** Bars of a loop with a numeral in each that has one. The bar being written in has a heavy line; right ones ring along theirs. */
export function NumeralBars(props: {
  readonly bars: number;
  /** In ASCII, by bar; `''` or none where the bar is empty. */
  readonly numerals: readonly string[];
  readonly x?: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly heavy?: number | null;
  readonly sounded?: boolean;
  readonly children?: ComponentChildren;
}) {
  const { bars, numerals, x = 0, y, width, height, heavy } = props;
  const bar = width / bars;
  const size = Math.min(height * 0.6, bar * 0.34);
  const low = y + height / 2;
  return (
    <>
      {Array.from({ length: bars }, (_, at) => {
        const numeral = numerals[at] ?? '';
        const left = x + at * bar;
        return (
          <g key={at}>
            {props.sounded && numeral !== '' && (
              <Lens from={[left + 1, low]} to={[left + bar - 1, low]} amplitude={height * 0.1} gauge={3} />
            )}
            <path d={`M${left} ${low}H${left + bar}`} class={heavy === at ? 'line-ink g6' : 'line-string g1'} />
            <BarLine x={left} y={low - height} height={height} />
            {numeral !== '' && <SvgNumeral numeral={numeral} x={left + bar / 2} y={y} size={size} />}
          </g>
        );
      })}
      <BarLine x={x + width} y={low - height} height={height} />
      {props.children}
    </>
  );
}
