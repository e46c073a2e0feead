import { tallyLayout } from '../marks-geometry.ts';
import { Tally } from '../music-marks.tsx';

/** Above this many seats one stroke stands for ten, in every tally of the drawing alike. */
const MOST_STROKES = 60;

/** The hands of one answer as gates of five, and their number: left edge at x, middle at y, within `width`. */
export function HandTally({
  hands,
  of,
  most: fullest,
  x,
  y,
  width,
  scale,
  height: room = Number.POSITIVE_INFINITY,
}: {
  readonly hands: number;
  /** Seats of the question. */
  readonly of: number;
  /** Hands of the fullest tally in the drawing. */
  readonly most: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly scale: number;
  /** Highest that a stroke may be. */
  readonly height?: number;
}) {
  const each = of > MOST_STROKES ? 10 : 1;
  const strokes = Math.floor(hands / each);
  // The gap is that of the fullest tally, so that all tallies of a drawing are one hand's.
  const most = tallyLayout(Math.max(1, Math.ceil(fullest / each)), 0, 1, 1).width;
  const number = 100 * scale;
  const gap = Math.min(20.5 * scale, (width - number) / Math.max(1, most), room / 3.8);
  const height = Math.min(78 * scale, gap * 4.2, room);
  const drawn = strokes === 0 ? 0 : tallyLayout(strokes, strokes, gap, height).width + 1.4 * gap;
  return (
    <>
      <Tally x={x} y={y - height / 2} hands={strokes} of={strokes} gap={gap} height={height} />
      <text
        class={`spread-count${hands === 0 ? ' nobody' : ''}`}
        x={x + drawn}
        y={y + 15 * scale}
        font-size={42 * scale}
      >
        {hands}
      </text>
    </>
  );
}
