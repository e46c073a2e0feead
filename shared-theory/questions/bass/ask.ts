import type { Ask } from '../question.ts';
import { capoOf, neckPlaceKey, readNeckPlace } from '../root/ask.ts';

/** The lowest note of one chord, marked on the two low strings. */
export const bassAsk: Ask<'bass'> = {
  kind: 'bass',
  targets: (slots) => Array.from({ length: slots }, (_, index) => index),
  ask: (target, settings) => ({ kind: 'bass', target, ...capoOf(settings) }),
  read: readNeckPlace,
  key: neckPlaceKey,
};
