import { signal, type Signal } from '@preact/signals';
import type { Keep } from '../shared/storage.ts';

const KEPT_AS = 'hearsay-speaker-delay';

/** How far the marks of the beat can be moved, in milliseconds, and by how much at a time. */
export const MOST_DELAY_MS = 500;
export const DELAY_STEP_MS = 10;

/** The nearest delay that can be set. */
function settableDelay(milliseconds: number): number {
  if (!Number.isFinite(milliseconds)) return 0;
  return Math.min(MOST_DELAY_MS, Math.max(0, Math.round(milliseconds / DELAY_STEP_MS) * DELAY_STEP_MS));
}

/** The delay of this room's speakers, kept by the page over reloads: it belongs to the machine, not to the class. */
export function createSpeakerDelay(keep: Keep): Pick<Signal<number>, 'value'> {
  const kept = signal(settableDelay(Number(keep.get(KEPT_AS) ?? 0)));
  return {
    get value() {
      return kept.value;
    },
    set value(wanted: number) {
      kept.value = settableDelay(wanted);
      keep.set(KEPT_AS, String(kept.value));
    },
  };
}
