import type { Spoken } from './asked.ts';

export const orderSpoken: Spoken = {
  prompt: () => 'Which chords come back, and where?',
  instruction: () => 'The first is A. Tap a bar, and again for its next letter.',
};

export const orderAnswers = {
  /** A place of the loop, for those who hear the page. */
  place: '{which} place: {letter}',
  empty: 'empty',
  letters: ['A', 'B', 'C', 'D'],
} as const;
