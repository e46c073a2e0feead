import type { Spoken } from './asked.ts';

export const homeSpoken: Spoken = {
  prompt: () => 'Where would you stop?',
  instruction: () => 'This asks for your ear: no answer is wrong.',
};

export const homeAnswers = { chord: '{which} chord' } as const;
