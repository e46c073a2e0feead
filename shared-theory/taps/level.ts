/** At which level of the beat somebody tapped. `lawful`: another count that is as right there. */
export type TempoLevel = 'same' | 'lawful' | 'double' | 'half' | 'three-against-two' | 'other';

/** Full credit for a tempo lies within this part of it: Accuracy1 of tempo estimation (Gouyon and others 2006). */
export const CLOSE = 0.04;

/** Part of the credit lies within this part of it: the tolerance that libraries of music retrieval take for a tempo (Raffel 2014). */
export const NEAR = 0.08;

/** Another level is recognised within this part of its ratio: common practice. */
const LEVEL_WINDOW = 0.06;

/** A level, and by what factor the tempo was multiplied to be there. */
export type LevelAt = { readonly level: TempoLevel; readonly factor: number };

const OTHERS: readonly LevelAt[] = [
  { level: 'double', factor: 2 },
  { level: 'half', factor: 1 / 2 },
  { level: 'three-against-two', factor: 3 / 2 },
  { level: 'three-against-two', factor: 2 / 3 },
  { level: 'three-against-two', factor: 3 },
  { level: 'three-against-two', factor: 1 / 3 },
];

/** How far a tempo is from another, as a part of that. */
export function tempoError(tempo: number, from: number): number {
  return Math.abs(tempo / from - 1);
}

/** Rounding makes nobody wrong who is as far away as may be. */
export const isWithin = (error: number, window: number): boolean => error <= window + 1e-9;

/**
 * At which level of a beat somebody tapped, the nearest of all that fit: the tempo itself and other lawful counts, `counts` as factors of
 * it, within 8 percent; the others within 6. Both tempi in beats a minute.
 */
export function levelAt(tempo: number, truth: number, counts: readonly number[]): LevelAt {
  const lawful = counts.filter((factor) => factor !== 1).map((factor): LevelAt => ({ level: 'lawful', factor }));
  const own = [{ level: 'same', factor: 1 } as const, ...lawful];
  const fits = [
    ...own.filter(({ factor }) => isWithin(tempoError(tempo, truth * factor), NEAR)),
    ...OTHERS.filter(({ factor }) => isWithin(tempoError(tempo, truth * factor), LEVEL_WINDOW)),
  ];
  const away = ({ factor }: LevelAt) => tempoError(tempo, truth * factor);
  // Of two at one distance the first stands: a lawful double is lawful.
  return fits.toSorted((one, other) => away(one) - away(other))[0] ?? { level: 'other', factor: 1 };
}

/** At which level of a beat somebody tapped; `counts`: lawful counts as factors of the true tempo. Both in beats a minute. */
export function tempoLevel(tempo: number, truth: number, counts: readonly number[]): TempoLevel {
  return levelAt(tempo, truth, counts).level;
}
