import type { Ask, Asking, NeckPlace, QuestionSettings } from '../question.ts';

/** Highest fret of the neck pad, unless a capo asks for more. */
const LAST_FRET = 12;

/** From a capo on it takes so many frets to find every note on two strings a fourth or a fifth apart. */
const FRETS_FOR_EVERY_NOTE = 6;

/** Lowest and highest fret that can be marked, counted from the nut: on a capo's own fret its open strings sound. */
export function neckFrets(capo = 0): readonly [number, number] {
  return [capo, Math.max(LAST_FRET, capo + FRETS_FOR_EVERY_NOTE)];
}

/** Every place of the neck pad under a capo: strings 6 and 5, from its open strings up. */
export function neckPlaces(capo = 0): readonly NeckPlace[] {
  const [lowest, highest] = neckFrets(capo);
  const frets = Array.from({ length: highest - lowest + 1 }, (_, index) => lowest + index);
  return ([6, 5] as const).flatMap((string) => frets.map((fret) => ({ string, fret })));
}

/** The root of one chord, marked on the two low strings. */
export const rootAsk: Ask<'root'> = {
  kind: 'root',
  targets: (slots) => Array.from({ length: slots }, (_, index) => index),
  ask: (target, settings) => ({ kind: 'root', target, ...capoOf(settings) }),
  read: readNeckPlace,
  key: neckPlaceKey,
};

/** The capo as a pad needs it: nothing where there is none. */
export function capoOf({ capo = 0 }: QuestionSettings): Pick<Asking, 'capo'> {
  return capo > 0 ? { capo } : {};
}

/** Reads a place of the neck pad; null where it is none, or lies behind the capo. */
export function readNeckPlace(value: unknown, { capo }: QuestionSettings): NeckPlace | null {
  if (typeof value !== 'object' || value === null || Object.keys(value).length !== 2) return null;
  const { string, fret } = value as { string?: unknown; fret?: unknown };
  return neckPlaces(capo).find((place) => place.string === string && place.fret === fret) ?? null;
}

/** One text per place: `6.5`. */
export function neckPlaceKey({ string, fret }: NeckPlace): string {
  return `${string}.${fret}`;
}
