import { ofChord } from '../ordinals.ts';
import type { Spoken } from './asked.ts';

const PROMPTS = {
  two: '{Which} chord: major or minor?',
  more: '{Which} chord: major, minor, something else?',
} as const;

export const qualitySpoken: Spoken = {
  prompt: ({ target, options = [] }) => {
    const moods = options.length > 0 && options.every((option) => option === 'major' || option === 'minor');
    return ofChord(moods ? PROMPTS.two : PROMPTS.more, target);
  },
  instruction: () => 'Listen for its third.',
};

export const qualityAnswers = {
  major: 'major',
  minor: 'minor',
  power: 'power chord',
  'suspended-fourth': 'suspended fourth',
  'suspended-second': 'suspended second',
  diminished: 'diminished',
  augmented: 'augmented',
} as const;
