import { effect, signal, type ReadonlySignal } from '@preact/signals';
import type { DeskView } from '../../server/protocol/views.ts';

/** Whole seconds since this page first saw the question open, by its own clock; null where none is open. */
export function openSeconds(view: ReadonlySignal<DeskView | null>): ReadonlySignal<number | null> {
  const seconds = signal<number | null>(null);
  let open: string | null = null;
  let ticking: ReturnType<typeof setInterval> | undefined;
  effect(() => {
    const current = view.value?.current;
    const now = current?.status === 'open' ? current.ask : null;
    if (now === open) return;
    open = now;
    clearInterval(ticking);
    seconds.value = now === null ? null : 0;
    if (now === null) return;
    const since = performance.now();
    ticking = setInterval(() => {
      seconds.value = Math.floor((performance.now() - since) / 1000);
    }, 250);
  });
  return seconds;
}
