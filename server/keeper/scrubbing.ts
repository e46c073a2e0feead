import type { EventStore } from '../store/event-store.ts';

/** Whoever reads the file meanwhile has most likely left it by then. */
const AGAIN_MS = 60_000;

/** Acts after so many milliseconds unless what it returns is called before. */
export type Later = (act: () => void, ms: number) => () => void;

const byTimer: Later = (act, ms) => {
  const timer = setTimeout(act, ms).unref();
  return () => clearTimeout(timer);
};

/**
 * Sees that what was erased leaves the files: begins with what an earlier run left, and tries again each minute until it is
 * done. `run` never rejects; `fault` hears of each try that failed.
 */
export function createScrubbing(
  store: Pick<EventStore, 'scrub'>,
  fault: (error: unknown) => void,
  later: Later = byTimer,
): { readonly run: () => Promise<void>; readonly close: () => void } {
  let closed = false;
  let callOff = (): void => {};
  const run = async (): Promise<void> => {
    callOff();
    try {
      await store.scrub();
    } catch (error) {
      fault(error);
      callOff();
      if (!closed) callOff = later(() => void run(), AGAIN_MS);
    }
  };
  void run();
  return {
    run,
    close: () => {
      closed = true;
      callOff();
    },
  };
}
