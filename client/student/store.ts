import { useEffect, useState } from 'preact/hooks';

/** A value that components follow. Small on purpose: it travels to every phone. */
export type Store<T> = {
  readonly get: () => T;
  /** Replaces the given fields and tells those who listen. */
  readonly set: (part: Partial<T>) => void;
  readonly listen: (listener: () => void) => () => void;
};

export function createStore<T extends object>(first: T): Store<T> {
  let value = first;
  const listeners = new Set<() => void>();
  return {
    get: () => value,
    set: (part) => {
      value = { ...value, ...part };
      for (const listener of listeners) listener();
    },
    listen: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** The store's value in a component, which is drawn again at each change. */
export function useStore<T extends object>(store: Store<T>): T {
  const [value, follow] = useState(store.get);
  useEffect(() => {
    const take = (): void => follow(() => store.get());
    // It may have changed between drawing and listening.
    take();
    return store.listen(take);
  }, [store]);
  return value;
}
