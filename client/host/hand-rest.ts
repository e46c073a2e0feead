import type { PerformedBar } from '../../shared-theory/live.ts';
import { afterBar, afterUnheard, MOST_FAST_SECONDS, RESTED, type HandRun } from '../../shared-theory/hand-care.ts';
import { changedControls, type Controls } from './controls.ts';
import { isUnheard, programOf, type Program } from './live-program.ts';
import type { LiveVamp } from './played-slots.ts';
import type { Stage } from './stage.ts';

const RELAXED = { kind: 'feel', feel: 'relaxed' } as const;

/** From so many seconds of fast downs on, what gives the hand its rest is made ready. */
const READY_FROM_SECONDS = 60;

/** So many seconds longer the rest may wait for its sounds, so that the beat does not break; then hands go before the beat. */
const PATIENT_SECONDS = 15;

/** The relaxed feel in place of what plays; null where it plays already, or cannot play the loop. */
function relaxedProgram(vamp: LiveVamp, controls: Controls): Program | null {
  if (controls.feel === 'relaxed') return null;
  try {
    return programOf(vamp, changedControls(vamp, controls, RELAXED));
  } catch (error) {
    // Chords that begin between its slots: the room is reminded all the same.
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** Begins early to make ready what a hand that has long struck fast downs will need. */
export function readyRest(hand: HandRun, { vamp, controls }: Program, stage: Stage): void {
  if (hand.seconds < READY_FROM_SECONDS) return;
  const relaxed = relaxedProgram(vamp, controls);
  relaxed?.bars.every((bar) => stage.ready(relaxed, bar));
}

/** Whether the hands in the room are due a rest, and the change that gives it; null while they are not. */
export function dueRest(
  hand: HandRun,
  { vamp, controls }: Program,
  stage: Stage,
): { readonly change: typeof RELAXED | null } | null {
  if (hand.seconds < MOST_FAST_SECONDS || isUnheard(controls.mode)) return null;
  const relaxed = relaxedProgram(vamp, controls);
  if (!relaxed) return { change: null };
  const waits = hand.seconds < MOST_FAST_SECONDS + PATIENT_SECONDS;
  return waits && !relaxed.bars.every((bar) => stage.ready(relaxed, bar)) ? null : { change: RELAXED };
}

/** How the hands fare after a bar that is played; those that lie still, because a question is open, rest. */
export function handAfter(hand: HandRun, along: boolean, { controls }: Program, bar: PerformedBar): HandRun {
  if (!along) return RESTED;
  const { kind } = controls.mode;
  return kind === 'drop-out' || kind === 'kit-only' ? afterUnheard(hand, bar.seconds) : afterBar(hand, bar);
}
