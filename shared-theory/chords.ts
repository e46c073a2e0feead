import type { NoteName } from './pitch.ts';

/** Chord qualities in the order of the answer pads. */
export const QUALITIES = [
  'major',
  'minor',
  'power',
  'suspended-fourth',
  'diminished',
  'augmented',
  'suspended-second',
] as const;

/** The quality of a chord built on its root. */
export type Quality = (typeof QUALITIES)[number];

/** A chord: a spelled root and a quality; its root is its bass. */
export type Chord = { readonly root: NoteName; readonly quality: Quality };
