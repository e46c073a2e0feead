import { BarLine, Lens, Slash } from '../music-marks.tsx';

/**
 * A chord of the loop that is held to the end: a slash under the sign of a hold. `height` from the sign's top to the line. Chosen
 * the sign is heavy; a home that stands rings along its line.
 */
export function Stop(props: {
  /** Middle of the cell. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly said?: boolean;
  readonly sounded?: boolean;
}) {
  const { x, y, width, height, said } = props;
  const line = y + height / 2;
  const [left, right] = [x - width / 2, x + width / 2];
  const arc = Math.min(height * 0.34, width * 0.3);
  const foot = y - height / 2 + arc;
  return (
    <>
      {props.sounded && <Lens from={[left, line]} to={[right, line]} amplitude={height * 0.1} gauge={3} />}
      <path d={`M${left} ${line}H${right}`} class={said ? 'line-ink g5' : 'line-string g1'} />
      <BarLine x={left} y={line - height * 0.3} height={height * 0.3} />
      <BarLine x={right} y={line - height * 0.3} height={height * 0.3} />
      <Slash x={x} y={line - height * 0.26} height={height * 0.4} />
      <path
        d={`M${x - arc} ${foot}A${arc} ${arc} 0 0 1 ${x + arc} ${foot}`}
        class={said ? 'line-ink g6' : 'line-ink g4'}
      />
      <circle cx={x} cy={foot - arc * 0.16} r={arc * (said ? 0.2 : 0.14)} class="fill-ink" />
    </>
  );
}
