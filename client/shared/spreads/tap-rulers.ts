import { layPiles, type Pile } from './bead-layout.ts';

/** A ruler that values lie on: where each stands, in the drawing's units, and which are written under it. */
export type Ruler = { readonly at: (value: number) => number; readonly ticks: readonly number[] };

/** Ends of the tempo ruler, beats a minute: what is tapped beyond them stands at an end. */
export const TEMPO_ENDS = [36, 260] as const;
const TEMPO_TICKS = [40, 60, 80, 100, 120, 160, 200, 240];

/** Tempi from `x` on over `width`: twice as fast is as far everywhere. */
export function tempoRuler(x: number, width: number): Ruler {
  const [low, high] = TEMPO_ENDS;
  const share = (tempo: number): number => Math.log(clamp(tempo, low, high) / low) / Math.log(high / low);
  return { at: (tempo) => x + share(tempo) * width, ticks: TEMPO_TICKS };
}

/** Unevenness in percent of a beat beyond which it stands at the end. */
export const MOST_UNEVEN = 15;

/** Unevenness in percent from `x` on over `width`, even at its beginning. */
export function unevenRuler(x: number, width: number): Ruler {
  return { at: (percent) => x + (clamp(percent, 0, MOST_UNEVEN) / MOST_UNEVEN) * width, ticks: [0, 5, 10, 15] };
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** Hands that stand in one place of a ruler. */
export type Stand = { readonly x: number; readonly pile: Pile };

/** Places are so many pitches wide where their piles are numbers. */
const WIDE = 4;

/**
 * One hand for each value, in piles on a ruler that are a bead's pitch apart, `room` the height that a pile may take; where beads no
 * longer fit one a hand, in wider places with numbers.
 */
export function standOn(
  { at }: Pick<Ruler, 'at'>,
  values: readonly number[],
  room: number,
  pitch: number,
): readonly Stand[] {
  const beads = places(values.map(at), pitch);
  const piles = layPiles(
    beads.map((hands) => hands.length),
    room,
    pitch,
  );
  if (piles.every(({ number }) => number === null))
    return piles.map((pile, index) => ({ x: Math.round((beads[index]?.[0] ?? 0) / pitch) * pitch, pile }));
  // A number stands in the middle of its hands.
  return places(values.map(at), WIDE * pitch).map((hands) => ({
    x: hands[hands.length >> 1] ?? 0,
    pile: { pitch, radius: pitch * 0.42, beads: 1, number: hands.length },
  }));
}

/** Hands by the place that they stand in, from left to right. */
function places(xs: readonly number[], width: number): readonly (readonly number[])[] {
  const found = new Map<number, number[]>();
  for (const x of xs.toSorted((one, other) => one - other)) {
    const place = Math.round(x / width);
    found.set(place, [...(found.get(place) ?? []), x]);
  }
  return [...found.values()];
}
