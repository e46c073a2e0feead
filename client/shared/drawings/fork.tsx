import { Lens } from '../music-marks.tsx';
import { forkProngs } from './fork-layout.ts';

/** A tuning fork on its side: one prong, or several. Chosen it is drawn heavy; the right one rings on every prong. */
export function Fork(props: {
  readonly prongs: 'one' | 'several';
  readonly x: number;
  /** Middle of its height. */
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly said?: boolean;
  readonly sounded?: boolean;
}) {
  const { prongs, x, y, width, height, said } = props;
  const { yoke, tips } = forkProngs(props);
  const [half, right] = [height / 2, x + width];
  const spread = `M${right} ${y - half}H${yoke + half}A${half} ${half} 0 0 0 ${yoke + half} ${y + half}H${right}`;
  return (
    <>
      <path
        d={`M${x} ${y}H${right}${prongs === 'several' ? spread : ''}`}
        class={`line-ink ${said ? 'fork-said' : 'g5'}`}
      />
      <circle cx={x} cy={y} r={height * (said ? 0.17 : 0.12)} class="fill-ink" />
      {props.sounded &&
        tips.map((tip) => (
          <Lens key={tip[1]} from={[yoke + half, tip[1]]} to={tip} amplitude={height * 0.13} gauge={4} />
        ))}
    </>
  );
}
