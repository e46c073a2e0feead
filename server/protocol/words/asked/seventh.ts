import { ofChord } from '../ordinals.ts';
import type { Spoken } from './asked.ts';

export const seventhSpoken: Spoken = {
  prompt: ({ target }) => ofChord('{Which} chord: does it carry a seventh?', target),
  instruction: () => 'A fourth note: leaning, soft, or none.',
};

export const seventhAnswers = {
  none: 'no seventh',
  seventh: 'seventh: it leans',
  'major-seventh': 'major seventh: it is soft',
} as const;

/** Under the sign that stands large on the pad. */
export const seventhSays = { none: 'no seventh', seventh: 'leans', 'major-seventh': 'soft' } as const;
