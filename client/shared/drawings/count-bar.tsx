import { BarLine, Lens, Slash } from '../music-marks.tsx';
import { countAt, countSlashes } from './count-bar-layout.ts';

/** A bar that holds so many slashes, its number at the left. Chosen its line is heavy; the right one rings along its line. */
export function CountBar(props: {
  readonly count: number;
  readonly x: number;
  /** Middle of the bar. */
  readonly y: number;
  readonly width: number;
  /** Of the bar lines. */
  readonly height: number;
  readonly said?: boolean;
  readonly sounded?: boolean;
}) {
  const { count, x, y, width, height, said } = props;
  const bar = { x, width, height };
  const [number, size] = [countAt(bar), height * 0.62];
  const clear = size * 0.62;
  return (
    <>
      {props.sounded && <Lens from={[x, y]} to={[x + width, y]} amplitude={height * 0.2} />}
      <path
        d={`M${x} ${y}H${number - clear}M${number + clear} ${y}H${x + width}`}
        class={said ? 'line-ink g5' : 'line-string g1'}
      />
      <BarLine x={x} y={y - height / 2} height={height} />
      <BarLine x={x + width} y={y - height / 2} height={height} />
      <text x={number} y={y + size * 0.35} font-size={size} text-anchor="middle" class="digit">
        {count}
      </text>
      {countSlashes(bar, count).map((at) => (
        <Slash key={at} x={at} y={y} height={height * 0.78} />
      ))}
    </>
  );
}
