import { KEY_IDS, keysAsk, readSet } from '../keys/ask.ts';
import type { Ask } from '../question.ts';

/** Which keys are still in once a third chord has sounded; none marked says that no key is. */
export const settlerAsk: Ask<'settler'> = {
  kind: 'settler',
  targets: (_slots, { settlers }) => Array.from({ length: settlers }, (_, index) => index),
  ask: (target, settings, { owners = [] }) => ({ kind: 'settler', target, options: [settings.policy, ...owners] }),
  read: (value) => readSet(value, KEY_IDS),
  key: keysAsk.key,
};
