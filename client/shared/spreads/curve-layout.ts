import type { WireTaps } from '../../../server/protocol/views.ts';
import { point, type Point } from '../pencil.ts';

type Curve = NonNullable<WireTaps['curve']>;

/** A room's drift in a box: the beats' places, the middle of the room, and the band that its middle half keeps to, as SVG paths. */
export type CurveLayout = {
  readonly beats: readonly { readonly beat: number; readonly x: number }[];
  readonly middle: string;
  readonly band: string;
  /** Height of a drift in percent of a beat, ahead upward. */
  readonly y: (percent: number) => number;
  /** Percent of a beat at the upper edge; as much behind at the lower. */
  readonly most: number;
};

/** The scale is one of these, in percent of a beat: the least that holds the curve. */
const SCALES = [25, 50, 100, 200] as const;

/** Lays a curve into a box; beyond the widest scale it runs along the edge. */
export function layCurve(
  curve: Curve,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): CurveLayout {
  const reach = Math.max(0, ...curve.flatMap(({ low, middle, high }) => [low, middle, high].map(Math.abs)));
  const most = SCALES.find((scale) => scale >= reach) ?? SCALES[SCALES.length - 1] ?? 200;
  const y = (percent: number): number => {
    const kept = Math.max(-most, Math.min(most, percent));
    return box.y + box.height / 2 - (kept / most) * (box.height / 2);
  };
  const step = box.width / Math.max(1, ...curve.map(({ beat }) => beat));
  const at = (beat: number): number => box.x + (beat - 0.5) * step;
  const line = (points: readonly Point[]): string =>
    points.map((each, index) => `${index === 0 ? 'M' : 'L'}${point(each)}`).join('');
  const along = (of: (each: Curve[number]) => number): readonly Point[] =>
    curve.map((each) => [at(each.beat), y(of(each))] as const);
  const edge = [...along(({ high }) => high), ...along(({ low }) => low).toReversed()];
  return {
    beats: curve.map(({ beat }) => ({ beat, x: at(beat) })),
    middle: line(along(({ middle }) => middle)),
    band: edge.length === 0 ? '' : `${line(edge)}z`,
    y,
    most,
  };
}
