import { Lens } from '../music-marks.tsx';
import { stair } from './stairs-layout.ts';

/** One stair. Chosen it is drawn heavy; the one that sounded ends in a ringing string. */
export function Stairs(props: {
  readonly direction: 'up' | 'down' | 'same';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly rise: number;
  readonly said?: boolean;
  readonly sounded?: boolean;
}) {
  const { said, width } = props;
  const { from, to, path } = stair(props.direction, props.x, props.y, width, props.rise);
  const run = props.direction === 'same' ? width : width / 2;
  return (
    <>
      <path d={path} class={`line-ink ${said ? 'stair-said' : 'g4'}`} />
      <circle cx={from[0]} cy={from[1]} r={(said ? 0.05 : 0.034) * width} class="fill-ink" />
      {props.sounded && <Lens from={[to[0] - run, to[1]]} to={to} amplitude={width * 0.055} />}
    </>
  );
}
