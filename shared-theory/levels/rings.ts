import type { Key } from '../keys.ts';

export const major = (...tonics: readonly string[]): Key[] => tonics.map((tonic) => ({ tonic, mode: 'major' }));
export const minor = (...tonics: readonly string[]): Key[] => tonics.map((tonic) => ({ tonic, mode: 'minor' }));

/** Keys that lie easily on the guitar, and those that follow. */
export const FIRST_RING = [...major('E', 'A', 'D', 'G', 'C'), ...minor('A', 'E', 'D')];
export const SECOND_RING = [...major('F', 'Bb', 'B'), ...minor('B', 'F#', 'G', 'C')];
