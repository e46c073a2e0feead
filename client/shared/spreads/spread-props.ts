import type { WireSpread, WireTruth } from '../../../server/protocol/views.ts';

/** How large a spread is drawn. */
type SpreadSize = {
  readonly width: number;
  readonly height: number;
  /** 1 on the host screen (units of a picture 1080 high); on a desk in pixels about 0.45. */
  readonly scale: number;
  /** How far a drawing may run on beyond its right edge, to the edge of the picture. */
  readonly bleed?: number;
};

export type SpreadProps = {
  readonly spread: WireSpread;
  /** The right answer, drawn in brass; absent before the reveal. */
  readonly truth?: WireTruth | null;
  readonly size: SpreadSize;
  /** False: the drawing without hands, where the answer is shown and the spread never was. */
  readonly hands?: boolean;
};

/** Hands that gave the answer of that key. */
export function handsOn(spread: WireSpread, key: string): number {
  return spread.counts.find((tally) => tally.key === key)?.count ?? 0;
}

/** Whether the answer of that key is right, as shown. */
export function isRight(truth: WireTruth | null | undefined, key: string): boolean {
  return truth ? truth.key === key || (truth.also ?? []).includes(key) : false;
}
