import { ofChord } from '../ordinals.ts';
import type { Spoken } from './asked.ts';

export const distanceSpoken: Spoken = {
  prompt: ({ target }) => ofChord('From home, how far to the {which} chord?', target),
  instruction: () => 'Sing the major scale from home.',
};

export const distanceAnswers = { distance: 'distance {number}, {way}', home: 'home, the same note' } as const;

/** Beside the distance line. */
export const lineWords = { home: 'home', up: 'up from home', down: 'down from home' } as const;
