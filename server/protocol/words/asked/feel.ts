import type { Spoken } from './asked.ts';

/** Six questions about the feel, two choices each. */
export const feelSpoken = {
  threes: {
    prompt: () => 'Six to the bar: in threes or in twos?',
    instruction: () => 'Sway with it. Two sways a bar, or three?',
  },
  'half-time': {
    prompt: () => 'Full time or half time?',
    instruction: () => 'Find the backbeat: twice in a bar, or once?',
  },
  swing: {
    prompt: () => 'Straight or swung?',
    instruction: () => 'Listen to the ands: halfway, or late?',
  },
  drive: {
    prompt: () => 'Driving or relaxed?',
    instruction: () => 'Does the hand push on, or let go?',
  },
  pendulum: {
    prompt: () => 'Could your hand keep swinging through it?',
    instruction: () => 'Down on the numbers, up between, no stop.',
  },
  'change-place': {
    prompt: () => 'Does the next chord come on one, or before?',
    instruction: () => 'Say one aloud and listen for the change.',
  },
} as const satisfies Readonly<Record<string, Spoken>>;

export const feelAnswers = {
  'two-threes': 'two threes',
  'three-twos': 'three twos',
  'full-time': 'full time',
  'half-time': 'half time',
  straight: 'straight',
  swung: 'swung',
  driving: 'driving',
  relaxed: 'relaxed',
  keeps: 'it keeps swinging',
  breaks: 'it has to stop',
  'on-one': 'on one',
  pushed: 'pushed, before one',
} as const;
