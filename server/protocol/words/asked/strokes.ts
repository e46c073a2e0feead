import type { Spoken } from './asked.ts';

export const strokesSpoken: Spoken = {
  prompt: () => 'All downs, or down and up?',
  instruction: () => 'Listen to the hand, not to the chords.',
};

export const strokesAnswers = { 'all-downs': 'all downs', 'down-up': 'down and up' } as const;
