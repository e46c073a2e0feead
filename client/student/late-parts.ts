import { createStore, useStore } from './store.ts';
import { loadOtherPads } from './pads/pads.ts';

type Later = typeof import('./later.ts');

const parts = createStore<{ readonly later: Later | null }>({ later: null });
let underway = false;

/** The parts that come late; null until they are here. */
export const useLater = (): Later | null => useStore(parts).later;

/** Fetches the late parts if they are not here yet. A failure is no loss: the next need tries again. */
export async function fetchLater(): Promise<void> {
  if (parts.get().later || underway) return;
  underway = true;
  try {
    parts.set({ later: await import('./later.ts') });
  } catch {
    // Out of reach: the page says less until then.
  } finally {
    underway = false;
  }
}

/** Behind the first pad, so that a network that fails later costs neither a question nor a reveal. */
export async function fetchAllBehind(): Promise<void> {
  await fetchLater();
  await loadOtherPads();
}
