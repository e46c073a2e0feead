import type { Spoken } from './asked.ts';

/** Four questions are answered on the beat grid. */
export const accentsSpoken: Spoken = {
  prompt: () => 'How heavy is each stroke?',
  instruction: () => 'Tap a slot: light, heavy, silent again.',
};

export const strokeGridSpoken: Spoken = {
  prompt: () => 'Does the hand go down, up, or miss?',
  instruction: () => 'Tap a slot: down, up, silent again.',
};

export const rolesSpoken: Spoken = {
  prompt: () => 'If this were a drum kit: which piece is where?',
  instruction: () => 'Tap a slot: kick, slap, closed hat, open hat.',
};

export const openedSpoken: Spoken = {
  prompt: () => 'Where does it ring open?',
  instruction: () => 'Mark every slot that is not cut short.',
};

/** What one slot may be, as it is said; weights by number. */
export const slotAnswers = {
  accents: ['silent', 'light', 'heavy'],
  'stroke-grid': { down: 'down', up: 'up', silent: 'silent' },
  roles: { kick: 'kick', slap: 'slap', closed: 'closed', open: 'open', silent: 'silent' },
  opened: { open: 'rings open', short: 'cut short' },
} as const;

/** Slots as they are said. */
export const slotWords = {
  beat: 'beat {beat}',
  bar: 'bar {bar}',
  /** Parts of a beat, by the signs over the grid. */
  parts: { '&': 'and', e: 'e', a: 'a' },
  untouched: 'nothing yet',
  /** One slot for those who hear the page: `beat 2, and: heavy`. */
  slot: '{place}: {choice}',
  slotShown: '{place}: you wrote {choice}, it was {right}',
} as const;
