import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { DeskView } from '../../server/protocol/views.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import type { Meter } from '../../shared-theory/vamps.ts';
import type { Choice } from './sound-choices.ts';

/** Bars in which a change that can be heard has come. */
const BARS_TO_WAIT = 2;

/** What was pressed and does not sound yet: until the sound has changed, or could have. */
export function useAwaited({ sound, vamp }: DeskView) {
  const awaited = useSignal<{ readonly label: string; readonly before: string } | null>(null);
  const sounding = JSON.stringify(sound);
  useEffect(() => {
    if (awaited.value === null) return undefined;
    const bar = (BEATS_PER_BAR[vamp?.meter as Meter] * 60) / (sound.tempo ?? vamp?.tempo ?? 60);
    const timer = setTimeout(() => void (awaited.value = null), BARS_TO_WAIT * bar * 1000);
    return () => clearTimeout(timer);
  }, [awaited.value]);
  return {
    label: awaited.value?.before === sounding ? awaited.value.label : null,
    begin: ({ name, on }: Choice) => {
      // What stands already changes nothing.
      const mine = on === true ? null : { label: name, before: sounding };
      awaited.value = mine;
      return {
        end: () => {
          if (awaited.value === mine) awaited.value = null;
        },
      };
    },
  };
}
