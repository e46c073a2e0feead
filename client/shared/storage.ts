/** What a page keeps over a reload. Private windows may refuse to store: then it is kept in memory for as long as the page lives. */
export type Keep = {
  readonly get: (name: string) => string | null;
  readonly set: (name: string, value: string) => void;
  readonly remove: (name: string) => void;
  /** False where the browser refused: what is kept here ends with the page. */
  readonly lasting: () => boolean;
};

type Store = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

/** `open` is called inside a guard: merely naming the storage throws in some private windows. */
export function createKeep(open: () => Store = () => localStorage): Keep {
  const memory = new Map<string, string>();
  let refused = false;
  const attempt = <T>(use: (store: Store) => T): T | null => {
    try {
      return use(open());
    } catch {
      // Storage that is forbidden or full: memory answers instead.
      refused = true;
      return null;
    }
  };
  return {
    get: (name) => memory.get(name) ?? attempt((store) => store.getItem(name)),
    set: (name, value) => {
      const stored = attempt((store) => (store.setItem(name, value), true));
      if (stored) memory.delete(name);
      else memory.set(name, value);
    },
    remove: (name) => {
      memory.delete(name);
      attempt((store) => store.removeItem(name));
    },
    lasting: () => !refused,
  };
}
