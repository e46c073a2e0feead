import type { Ask, KeyId } from '../question.ts';

/** The twenty-four keys by tonic and mode, majors first: `0M` C major to `11m` B minor. */
export const KEY_IDS: readonly KeyId[] = ['M', 'm'].flatMap((mode) =>
  Array.from({ length: 12 }, (_, tonic) => `${tonic}${mode}`),
);

/** Every key that owns all chords of the loop; none marked says that no key does. */
export const keysAsk: Ask<'keys'> = {
  kind: 'keys',
  targets: (slots) => (slots > 0 ? [0] : []),
  ask: (_target, settings, { loop }) => ({
    kind: 'keys',
    target: 0,
    options: [settings.policy],
    ...(loop === undefined ? {} : { loop }),
  }),
  // Minors are read under both policies: under majors only they are relative minors by another name, not nonsense.
  read: (value) => {
    if (!Array.isArray(value) || value.length > KEY_IDS.length) return null;
    const ids: readonly unknown[] = value;
    const known = KEY_IDS.filter((id) => ids.includes(id));
    return known.length === ids.length ? known : null;
  },
  key: (answer) => (answer.length === 0 ? 'none' : KEY_IDS.filter((id) => answer.includes(id)).join(' ')),
};
