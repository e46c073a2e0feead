import { ofChord } from '../ordinals.ts';
import type { Spoken } from './asked.ts';

const PROMPTS = {
  next: 'From home, where did the bass go?',
  later: 'From home to the {which} chord, where did the bass go?',
} as const;

export const directionSpoken: Spoken = {
  // In a loop of two there is one other place to go; in a longer one home may come back last.
  prompt: ({ target, loop }) => ofChord(loop === 'two' && target === 1 ? PROMPTS.next : PROMPTS.later, target),
  instruction: () => 'Hum the lowest note.',
};

export const directionAnswers = { up: 'up', down: 'down', same: 'stays' } as const;
