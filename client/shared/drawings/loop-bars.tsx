import type { ComponentChildren } from 'preact';
import { BarLine, Lens } from '../music-marks.tsx';

/** Bars of a loop with what is written in each. The bar being written in has a heavy line; right ones ring along theirs. */
export function LoopBars(props: {
  readonly bars: number;
  readonly x?: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly heavy?: number | null;
  /** Whether a bar rings. */
  readonly sounded?: (bar: number) => boolean;
  /** What stands in a bar, its middle on x and the y of all; `size` fits any bar of this width and height. */
  readonly written: (bar: number, x: number, size: number) => ComponentChildren;
  readonly children?: ComponentChildren;
}) {
  const { bars, x = 0, y, width, height, heavy } = props;
  const bar = width / bars;
  const size = Math.min(height * 0.6, bar * 0.34);
  const low = y + height / 2;
  return (
    <>
      {Array.from({ length: bars }, (_, at) => {
        const left = x + at * bar;
        return (
          <g key={at}>
            {props.sounded?.(at) && (
              <Lens from={[left + 1, low]} to={[left + bar - 1, low]} amplitude={height * 0.1} gauge={3} />
            )}
            <path d={`M${left} ${low}H${left + bar}`} class={heavy === at ? 'line-ink g6' : 'line-string g1'} />
            <BarLine x={left} y={low - height} height={height} />
            {props.written(at, left + bar / 2, size)}
          </g>
        );
      })}
      <BarLine x={x + width} y={low - height} height={height} />
      {props.children}
    </>
  );
}
