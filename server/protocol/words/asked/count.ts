import type { Spoken } from './asked.ts';

export const countSpoken: Spoken = {
  prompt: () => 'How many chords, each counted once?',
  instruction: () => 'One that comes back is not new.',
};
