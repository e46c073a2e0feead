import { BarLine, DownBow, Lens, Slash, UpBow } from '../music-marks.tsx';

const COUNTS = ['1', '&', '2', '&'];

/** Two beats in eighths, counted over their bow signs: all down-bows, or down-bow on the number and up-bow on the and. */
export function StrokesBar(props: {
  readonly feel: 'all-downs' | 'down-up';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly said?: boolean;
  readonly sounded?: boolean;
}) {
  const { x, y, width, height, feel } = props;
  const [line, pitch] = [y + height * 0.74, width / 4];
  const at = (stroke: number): number => x + (stroke + 0.5) * pitch;
  const size = Math.min(height * 0.25, pitch * 0.38);
  return (
    <>
      <path d={`M${x} ${line}h${width}`} class={props.said ? 'line-ink g5' : 'line-string g1'} />
      {props.sounded && <Lens from={[x, line]} to={[x + width, line]} amplitude={height * 0.09} />}
      <BarLine x={x} y={line - height * 0.27} height={height * 0.54} />
      <BarLine x={x + width} y={line - height * 0.27} height={height * 0.54} />
      {[0, 1, 2, 3].map((stroke) => (
        <g key={stroke}>
          <text
            x={at(stroke)}
            y={y + height * 0.06}
            font-size={height * 0.15}
            text-anchor="middle"
            class={stroke % 2 === 0 ? 'stroke-count' : 'stroke-count fill-ink2'}
          >
            {COUNTS[stroke]}
          </text>
          {feel === 'down-up' && stroke % 2 === 1 ? (
            <UpBow x={at(stroke)} y={y + height * 0.27} size={size} />
          ) : (
            <DownBow x={at(stroke)} y={y + height * 0.27} size={size} />
          )}
          <Slash x={at(stroke)} y={line} height={height * 0.4} />
        </g>
      ))}
    </>
  );
}
