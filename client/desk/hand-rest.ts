import { effect, signal, type ReadonlySignal } from '@preact/signals';
import type { SoundChange } from '../../server/protocol/messages.ts';
import type { DeskView } from '../../server/protocol/views.ts';
import { MOST_FAST_SECONDS } from '../../shared-theory/hand-care.ts';

/** Seconds that the news of a sound may be late: so much shorter the groove may seem to have gone on. */
const LATE = 5;

type HandRest = {
  /** The host has gone over to the relaxed feel by itself; until something else sounds or is asked. Said once a page. */
  readonly rested: ReadonlySignal<boolean>;
  /** This desk has asked for a change of the sound. */
  readonly asked: (change: SoundChange) => void;
};

/**
 * Whether the host let the room's hands rest: a relaxed feel that nobody asked for here, after the groove had gone on for as long as
 * hands strike fast downs at most, with no question open.
 */
export function createHandRest(view: ReadonlySignal<DeskView | null>): HandRest {
  const rested = signal(false);
  let said = false;
  let askedHere = false;
  let before: { readonly running: string; readonly since: number } | null = null;
  effect(() => {
    const now = view.value;
    const runs = now !== null && now.sound.playing && now.current?.status !== 'open';
    const relaxed = runs && now.sound.feel === 'relaxed';
    const running = runs ? `${now.sound.round} ${now.sound.feel}` : '';
    if (running === before?.running) return;
    const seconds = before ? (performance.now() - before.since) / 1000 : 0;
    const mine = askedHere;
    askedHere = false;
    const sameRound = before !== null && before.running.split(' ')[0] === now?.sound.round;
    rested.value = relaxed && sameRound && !mine && !said && seconds >= MOST_FAST_SECONDS - LATE;
    said ||= rested.value;
    before = runs ? { running, since: performance.now() } : null;
  });
  return {
    rested,
    asked: (change) => {
      if (change.kind === 'feel') askedHere = true;
    },
  };
}
