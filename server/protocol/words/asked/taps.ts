import type { Spoken } from './asked.ts';

/** Four questions are answered by tapping. */
export const tempoSpoken: Spoken = {
  prompt: () => 'Tap along, one tap a number.',
  instruction: () => 'Use your thumb or the edge of your hand.',
};

export const steadinessSpoken: Spoken = {
  prompt: () => 'Tap as evenly as you can.',
  instruction: () => 'One tap for each number, each like the last.',
};

export const dropOutSpoken: Spoken = {
  prompt: () => 'Keep tapping, even when it falls silent.',
  instruction: () => 'One tap for each number, straight through the gap.',
};

export const togetherSpoken: Spoken = {
  prompt: () => 'All of us: tap every number.',
  instruction: () => 'Lock in with the room. Nothing is marked.',
};

/** On the pad. */
export const tapWords = {
  pad: 'tap here',
  /** Before the least number of taps. */
  first: 'The first eight taps show no more than that.',
  /** After it. */
  enough: 'Eight are in. Write it, or go on: more taps say more.',
  full: 'That is enough. Write it.',
  /** After a pause the count begins again. */
  anew: 'You stopped, so this counts from one again.',
  again: 'again',
  /** drop-out */
  goOn: 'Go on. It falls silent soon.',
  silent: 'Keep on. It comes back.',
  back: 'It is back. Write it, or go on.',
  /** together */
  goesIn: 'Go on. Your taps go in by themselves.',
} as const;
