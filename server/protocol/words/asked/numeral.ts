import type { Spoken } from './asked.ts';

export const numeralSpoken: Spoken = {
  prompt: ({ loop }) => (loop === 'one' ? 'Which numeral is this chord?' : 'Which numeral is each chord?'),
  instruction: ({ loop }) =>
    loop === 'one' ? 'In any key that owns it.' : 'One bar for each different chord, in any key that owns all.',
};

export const numeralAnswers = {
  /** A bar of the numerals, for those who hear the page. */
  bar: '{which} chord: {numeral}',
  empty: 'empty',
  flat: 'flat',
  sharp: 'sharp',
} as const;
