import { BarLine, DownBow, Lens, Slash, UpBow } from '../music-marks.tsx';

/** A bar of four slashes with a bow sign over each: all down-bows, or down-bow and up-bow in turn. */
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
  const [line, pitch] = [y + height * 0.68, width / 4];
  const at = (stroke: number): number => x + (stroke + 0.5) * pitch;
  const size = Math.min(height * 0.28, pitch * 0.42);
  return (
    <>
      <path d={`M${x} ${line}h${width}`} class={props.said ? 'line-ink g5' : 'line-string g1'} />
      {props.sounded && <Lens from={[x, line]} to={[x + width, line]} amplitude={height * 0.09} />}
      <BarLine x={x} y={line - height * 0.27} height={height * 0.54} />
      <BarLine x={x + width} y={line - height * 0.27} height={height * 0.54} />
      {[0, 1, 2, 3].map((stroke) => (
        <g key={stroke}>
          {feel === 'down-up' && stroke % 2 === 1 ? (
            <UpBow x={at(stroke)} y={y + height * 0.18} size={size} />
          ) : (
            <DownBow x={at(stroke)} y={y + height * 0.18} size={size} />
          )}
          <Slash x={at(stroke)} y={line} height={height * 0.4} />
        </g>
      ))}
    </>
  );
}
