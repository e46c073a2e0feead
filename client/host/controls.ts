import { isBeside, type Feel, type SoundChange } from '../../server/protocol/messages.ts';
import type { Band } from '../../shared-theory/band.ts';
import { withFeel } from '../../shared-theory/feels.ts';
import { climbed, withTempo } from '../../shared-theory/live.ts';
import { playedSlots, type LiveVamp, type Mode } from './played-slots.ts';

/** How a vamp is played now: what sounds of it, at a tempo, in which feel, with whom. */
export type Controls = {
  readonly mode: Mode;
  /** Beats a minute. */
  readonly tempo: number;
  /** The tempo that was asked for: a groove that could not take it gives it back to one that can. */
  readonly wished: number;
  /** Where the tempo climbs to; null while it does not. */
  readonly climb: number | null;
  readonly feel: Feel;
  readonly band: Band;
};

/** Controls at the start of a vamp. */
export function fullControls({ tempo, band = { kit: false, bass: false } }: LiveVamp): Controls {
  return { mode: { kind: 'full' }, tempo, wished: tempo, climb: null, feel: 'written', band };
}

/** The vamp in the feel and at the tempo of its controls. */
export function feltVamp(vamp: LiveVamp, { feel, tempo }: Pick<Controls, 'feel' | 'tempo'>): LiveVamp {
  return { ...withFeel(vamp, feel), tempo };
}

/** Controls after a change; the tempo is one that the groove can take. Throws `RangeError` for a slot or settler that the loop has not. */
export function changedControls(vamp: LiveVamp, controls: Controls, change: SoundChange): Controls {
  if (!isBeside(change)) {
    playedSlots(vamp, change);
    return { ...controls, mode: change };
  }
  switch (change.kind) {
    case 'tempo': {
      const { tempo } = withTempo(feltVamp(vamp, controls), change.tempo);
      // Whoever takes the tempo in hand ends the climb.
      return { ...controls, tempo, wished: tempo, climb: null };
    }
    case 'climb':
      return climbing(vamp, controls, change.to);
    case 'feel': {
      const { feel } = change;
      const wished = { ...vamp, tempo: controls.wished };
      const { tempo } = feel === 'written' ? withTempo(wished, controls.wished) : withFeel(wished, feel);
      return climbing(vamp, { ...controls, feel, tempo }, controls.climb);
    }
    case 'band':
      return { ...controls, band: { kit: change.kit, bass: change.bass } };
  }
}

/** Controls that climb to a mark, as far as the groove can take it; they do not where it is reached already. */
function climbing(vamp: LiveVamp, controls: Controls, to: number | null): Controls {
  const mark = to === null ? null : withTempo(feltVamp(vamp, controls), to).tempo;
  return { ...controls, climb: mark !== null && mark > controls.tempo ? mark : null };
}

/** Controls for the next time round of a climb; the climb ends at its mark. */
export function climbedControls(controls: Controls): Controls {
  const { climb } = controls;
  if (climb === null) return controls;
  const tempo = climbed(controls.tempo, climb);
  return { ...controls, tempo, wished: tempo, climb: tempo < climb ? climb : null };
}

/** What a change turned out to be, in the words of the room: the tempo as it is played, and what ended or moved with it. */
export function takenAs(before: Controls, after: Controls, change: SoundChange): readonly SoundChange[] {
  const tempo = { kind: 'tempo', tempo: after.tempo } as const;
  if (!isBeside(change)) return [change];
  switch (change.kind) {
    case 'tempo':
      // The room cannot tell a tempo that was asked for from a step of the climb.
      return before.climb === null ? [tempo] : [tempo, { kind: 'climb', to: after.tempo }];
    case 'climb':
      return [{ kind: 'climb', to: after.climb ?? after.tempo }];
    case 'feel': {
      const moved = after.tempo === before.tempo ? [] : [tempo];
      const mark = after.climb === before.climb ? [] : [{ kind: 'climb', to: after.climb ?? after.tempo } as const];
      return [change, ...moved, ...mark];
    }
    case 'band':
      return [change];
  }
}
