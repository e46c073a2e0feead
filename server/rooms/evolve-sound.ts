import { countIn } from '../../shared-theory/live.ts';
import type { RoomEvent, Stamp } from './events.ts';
import type { RoomState, RoundRecord } from './state.ts';
import { roundOf, SILENCE } from './state.ts';

type SoundEvent = Extract<RoomEvent, { type: 'VampStarted' | 'ChangeTook' | 'SilenceKept' | 'VampStopped' }>;

/** Folds what the host page reports of its sound. */
export function soundOn(state: RoomState, event: SoundEvent, stamp: Stamp): void {
  const record = roundOf(state, event.round);
  switch (event.type) {
    case 'VampStarted':
      if (record !== undefined) {
        noteTempo(record, event.tempo);
        record.sounded = {
          since: { stamp: { at: stamp.at, mono: stamp.mono, boot: stamp.boot }, tempo: event.tempo },
          cameHome: cameHome(record, stamp),
        };
      }
      state.sound = {
        playing: true,
        round: event.round,
        change: { kind: 'full' },
        tempo: event.tempo,
        again: null,
        kept: false,
      };
      return;
    case 'ChangeTook': {
      const { change, bar } = event;
      if (change.kind === 'tempo') {
        if (record !== undefined) noteTempo(record, change.tempo);
        state.sound = { ...state.sound, tempo: change.tempo };
      } else if (change.kind === 'again') {
        state.sound = { ...state.sound, change: { kind: 'full' }, again: bar, kept: false };
      } else state.sound = { ...state.sound, change, kept: false };
      // From then on nobody knows how far it has come, unless it had come home already.
      if (record !== undefined && change.kind !== 'again') stopCounting(record, stamp);
      return;
    }
    case 'SilenceKept':
      if (state.sound.change.kind === 'silence') state.sound = { ...state.sound, kept: true };
      return;
    case 'VampStopped':
      if (record !== undefined) stopCounting(record, stamp);
      state.sound = SILENCE;
      return;
  }
}

/** Whether the loop of a round has come home by a moment, all of it having sounded; null where nobody knows. */
export function cameHome({ heard, sounded }: RoundRecord, now: Stamp): boolean | null {
  const { since } = sounded;
  if (sounded.cameHome === true || since === null) return sounded.cameHome;
  const { stamp, tempo } = since;
  const elapsedMs = now.boot === stamp.boot ? now.mono - stamp.mono : now.at - stamp.at;
  const beats = heard.slots.reduce((sum, slot) => sum + slot.beats, 0);
  return elapsedMs >= (countIn(heard.meter, tempo).seconds + (beats * 60) / tempo) * 1000;
}

function stopCounting(record: RoundRecord, now: Stamp): void {
  // What was broken off before it came home leaves nobody sure of what was heard.
  record.sounded = { since: null, cameHome: cameHome(record, now) === true ? true : null };
}

/** At another tempo no answer is blamed on it. */
function noteTempo(record: RoundRecord, tempo: number): void {
  if (tempo === record.heard.tempo || record.tempoChanged) return;
  record.tempoChanged = true;
  record.revision += 1;
}
