import { MOST_HOMES } from '../home/ask.ts';
import type { Ask, KeyId } from '../question.ts';

/** The twenty-four keys by tonic and mode, majors first: `0M` C major to `11m` B minor. */
export const KEY_IDS: readonly KeyId[] = ['M', 'm'].flatMap((mode) =>
  Array.from({ length: 12 }, (_, tonic) => `${tonic}${mode}`),
);

/** Under `modes`, the home: one of the different chords in order of their first sounding. */
export const HOME_IDS: readonly KeyId[] = Array.from({ length: MOST_HOMES }, (_, index) => `h${index}`);

/** Reads a set of texts, each once at most, in the order of those that are known; null where one is not known. */
export function readSet(value: unknown, known: readonly KeyId[]): readonly KeyId[] | null {
  if (!Array.isArray(value) || value.length > known.length) return null;
  const ids: readonly unknown[] = value;
  const found = known.filter((id) => ids.includes(id));
  return found.length === ids.length ? found : null;
}

/** An answer taken apart: its keys, and its home where it has one. */
export function partsOf(answer: readonly KeyId[]): { readonly keys: ReadonlySet<KeyId>; readonly home: KeyId | null } {
  return {
    keys: new Set(answer.filter((id) => !HOME_IDS.includes(id))),
    home: answer.find((id) => HOME_IDS.includes(id)) ?? null,
  };
}

/** Every key that owns all chords of the loop; none marked says that no key does. Under `modes` their parent scales and one home. */
export const keysAsk: Ask<'keys'> = {
  kind: 'keys',
  targets: (slots) => (slots > 0 ? [0] : []),
  ask: (_target, settings, { loop }) => ({
    kind: 'keys',
    target: 0,
    options: [settings.policy],
    ...(loop === undefined ? {} : { loop }),
  }),
  // Minors are read under every policy: where majors are asked they are relative minors by another name, not nonsense.
  read: (value, { policy }) => {
    if (policy !== 'modes') return readSet(value, KEY_IDS);
    const ids = readSet(value, [...KEY_IDS, ...HOME_IDS]);
    return ids !== null && ids.filter((id) => HOME_IDS.includes(id)).length > 1 ? null : ids;
  },
  key: (answer) =>
    answer.length === 0 ? 'none' : [...KEY_IDS, ...HOME_IDS].filter((id) => answer.includes(id)).join(' '),
};
