import type { Ask } from '../question.ts';

/** The quality of one chord, among those on the pad. */
export const qualityAsk: Ask<'quality'> = {
  kind: 'quality',
  targets: (slots) => Array.from({ length: slots }, (_, index) => index),
  // A letter is the root of this very chord: it may stand only once that root has been shown, or it tells it.
  ask: (target, settings, { letter }) => ({
    kind: 'quality',
    target,
    options: settings.qualities,
    ...(letter === undefined ? {} : { letter }),
  }),
  read: (value, settings) => settings.qualities.find((quality) => quality === value) ?? null,
  key: (answer) => answer,
};
