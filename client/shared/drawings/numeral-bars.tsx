import type { ComponentChildren } from 'preact';
import { SvgNumeral } from '../chord-text.tsx';
import { LoopBars } from './loop-bars.tsx';

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
  const { numerals, sounded, ...bars } = props;
  return (
    <LoopBars
      {...bars}
      sounded={(bar) => sounded === true && !!numerals[bar]}
      written={(bar, x, size) => numerals[bar] && <SvgNumeral numeral={numerals[bar]} x={x} y={props.y} size={size} />}
    />
  );
}
