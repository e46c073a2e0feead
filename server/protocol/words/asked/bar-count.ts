import type { Spoken } from './asked.ts';

export const barCountSpoken: Spoken = {
  prompt: () => 'How far do you count before one comes back?',
  instruction: () => 'Nod on the heaviest number and count from it.',
};
