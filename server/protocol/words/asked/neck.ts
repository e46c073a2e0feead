import { ofChord } from '../ordinals.ts';
import type { Spoken } from './asked.ts';

/** Two questions are answered on the neck. */
export const bassSpoken: Spoken = {
  prompt: ({ target }) => ofChord('{Which} chord: which note is in the bass?', target),
  instruction: () => 'Root or not: mark the lowest note.',
};

export const rootSpoken: Spoken = {
  prompt: ({ target }) => ofChord('{Which} chord: where is its root?', target),
  instruction: () => 'Hum it, then find it on the low strings.',
};

/** Said of a capo on the neck. */
export const capoWords = {
  bar: 'capo {fret}',
  names: 'sounding names',
} as const;

export const neckAnswers = { neckOpen: 'string {string}, open', neckFret: 'string {string}, fret {fret}' } as const;
