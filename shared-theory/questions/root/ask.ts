import type { Ask, NeckPlace } from '../question.ts';

/** Highest fret of the neck pad. */
export const LAST_FRET = 12;

/** Every place of the neck pad: strings 6 and 5, open to the twelfth fret. */
export const NECK_PLACES: readonly NeckPlace[] = ([6, 5] as const).flatMap((string) =>
  Array.from({ length: LAST_FRET + 1 }, (_, fret) => ({ string, fret })),
);

/** The root of one chord, marked on the two low strings. */
export const rootAsk: Ask<'root'> = {
  kind: 'root',
  targets: (slots) => Array.from({ length: slots }, (_, index) => index),
  ask: (target) => ({ kind: 'root', target }),
  read: readNeckPlace,
  key: neckPlaceKey,
};

/** Reads a place of the neck pad; null where it is none. */
export function readNeckPlace(value: unknown): NeckPlace | null {
  if (typeof value !== 'object' || value === null || Object.keys(value).length !== 2) return null;
  const { string, fret } = value as { string?: unknown; fret?: unknown };
  return NECK_PLACES.find((place) => place.string === string && place.fret === fret) ?? null;
}

/** One text per place: `6.5`. */
export function neckPlaceKey({ string, fret }: NeckPlace): string {
  return `${string}.${fret}`;
}
