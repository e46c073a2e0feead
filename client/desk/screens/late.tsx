import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { deskWords } from '../../../server/protocol/words/en.ts';

/** Parts of the desk that are fetched when they are first shown, so that the round is there at once. */
function createLate<T>(fetchPart: () => Promise<T>) {
  const part = signal<T | null>(null);
  const failed = signal(false);
  const fetch = async (): Promise<void> => {
    if (part.value !== null) return;
    failed.value = false;
    try {
      part.value = await fetchPart();
    } catch {
      // No network: the page says so, and asks again when it is turned to again.
      failed.value = true;
    }
  };
  /** Draws the part once it is there. */
  function Late({ children }: { readonly children: (part: T) => JSX.Element }) {
    useEffect(() => void fetch(), []);
    if (part.value !== null) return children(part.value);
    return <p role="status">{failed.value ? deskWords.lateFailed : deskWords.moment}</p>;
  }
  return { fetch, Late, here: (): boolean => part.value !== null };
}

export const leaves = createLate(() => import('../later.ts'));
export const grooves = createLate(() => import('./groove-leaf.tsx'));
/** What is drawn once answers come: fetched as soon as the page stands, so that it is there at the first close. */
export const answers = createLate(() => import('../answers.ts'));
