import type { RoomSettings } from '../../messages.ts';
import type { Asked, Spoken } from './asked.ts';

type Policy = RoomSettings['policy'];

/** By what everyone knows of the loop: one chord, more than one, nothing yet. */
type Prompts = { readonly one: string; readonly more: string; readonly any: string };

const MAJOR_OR_MINOR: Prompts = {
  one: 'Which keys own this chord, major or minor?',
  more: 'Which keys own all of these chords, major or minor?',
  any: 'Which keys own every chord here, major or minor?',
};

const PROMPTS: Readonly<Record<Policy, Prompts>> = {
  majors: {
    one: 'Which major keys own this chord?',
    more: 'Which major keys own all of these chords?',
    any: 'Which major keys own every chord here?',
  },
  relatives: MAJOR_OR_MINOR,
  'raised-seventh': MAJOR_OR_MINOR,
  modes: {
    one: 'Which scales own this chord, and is it home?',
    more: 'Which scales own these chords, and which is home?',
    any: 'Which scales own every chord here, and which is home?',
  },
};

const policyOf = ({ options: [policy] = [] }: Asked): Policy => (policy ?? 'majors') as Policy;

export const keysSpoken: Spoken = {
  prompt: (asked) => {
    const prompts = PROMPTS[policyOf(asked)];
    return asked.loop === 'one' ? prompts.one : asked.loop === undefined ? prompts.any : prompts.more;
  },
  instruction: (asked) => {
    const policy = policyOf(asked);
    if (policy === 'raised-seventh') return 'A minor key may raise its seventh. Mark every one.';
    return policy === 'modes'
      ? 'Mark every parent scale, and one chord as home.'
      : 'Mark every one. If none owns them all, say so.';
  },
};

/** Which of the keys a settler leaves: the first chord that joins in, each that takes its place, or a note over the loop. */
export const settlerSpoken: Spoken = {
  prompt: ({ target, sung }) =>
    `${sung ? 'A note is sung' : target === 0 ? 'A new chord joins in' : 'Another chord instead'}. Which keys are left?`,
  instruction: ({ sung }) =>
    sung ? 'Mark those in which the note belongs.' : 'Mark those that own the new chord too.',
};

export const keysAnswers = {
  'no-key': 'no key owns all',
  'no-scale': 'no scale owns all',
  'none-left': 'no key is left',
} as const;

/** Under the policy of parent scales: before the chords that may be home, and one of them. */
export const homeWords = { before: 'home', is: 'home: {which} chord' } as const;

/** In the middle of the circle, by line. */
export const noKeyLines = {
  owns: ['no key', 'owns all'],
  ownsScale: ['no scale', 'owns all'],
  left: ['no key', 'is left'],
} as const;
