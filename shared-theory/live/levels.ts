import type { Performance } from '../perform.ts';

/** How much quieter soft is: ten decibels are about half as loud to the ear. */
const SOFT_DECIBELS = 10;

/** A performance clearly quieter, every sound by as much. */
export function softly(performance: Performance): Performance {
  const soften = <T extends { readonly trim: number }>(each: T): T => ({ ...each, trim: each.trim - SOFT_DECIBELS });
  const { notes, kit, bass } = performance;
  return {
    ...performance,
    notes: notes.map(soften),
    ...(kit ? { kit: kit.map(soften) } : {}),
    ...(bass ? { bass: bass.map(soften) } : {}),
  };
}

/** The bars of a performance with nothing in them. */
export function unheard({ seconds, loops, bars }: Performance): Performance {
  return { seconds, loops, bars, notes: [] };
}
