import { countIn } from '../../shared-theory/live.ts';
import { isBeside } from '../protocol/messages.ts';
import type { ModeChange, SoundChange } from '../protocol/messages.ts';
import type { RoomEvent, Stamp } from './events.ts';
import type { RoomState, RoundRecord, SoundState } from './state.ts';
import { roundOf, SILENCE } from './state.ts';

type SoundEvent = Extract<RoomEvent, { type: 'VampStarted' | 'ChangeTook' | 'SilenceKept' | 'VampStopped' }>;

/** Folds what the host page reports of its sound. */
export function soundOn(state: RoomState, event: SoundEvent, stamp: Stamp): void {
  const record = roundOf(state, event.round);
  switch (event.type) {
    case 'VampStarted': {
      const before = state.sound.change;
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
        change: FULL,
        tempo: event.tempo,
        climb: null,
        feel: 'written',
        band: state.settings.band,
        again: null,
        kept: false,
      };
      noteOnPhones(state, before);
      return;
    }
    case 'ChangeTook': {
      const { change, bar } = event;
      if (change.kind === 'tempo' && record !== undefined) noteTempo(record, change.tempo);
      const before = state.sound.change;
      state.sound = { ...state.sound, ...changed(state.sound, change, bar) };
      if (!isBeside(change)) noteOnPhones(state, before);
      // From then on nobody knows how far it has come, unless it had come home already.
      if (record !== undefined && !GOES_ON.includes(change.kind)) stopCounting(record, stamp);
      return;
    }
    case 'SilenceKept':
      if (state.sound.change.kind === 'silence') state.sound = { ...state.sound, kept: true };
      return;
    case 'VampStopped': {
      if (record !== undefined) stopCounting(record, stamp);
      const before = state.sound.change;
      state.sound = SILENCE;
      noteOnPhones(state, before);
      return;
    }
  }
}

const FULL = { kind: 'full' } as const;

/** Of what sounds phones are told that the groove drops out, and that an own grid is played, and no more. */
function noteOnPhones(state: RoomState, before: ModeChange): void {
  const told = ({ kind }: ModeChange) => kind === 'drop-out' || kind === 'echo';
  const { change } = state.sound;
  if ((told(before) || told(change)) && JSON.stringify(before) !== JSON.stringify(change)) state.turn += 1;
}

/** What leaves the loop where it is, at its tempo; or begins it again. */
const GOES_ON: readonly SoundChange['kind'][] = ['again', 'climb', 'feel', 'band'];

/** What a change makes of the sound. */
function changed({ tempo, climb }: SoundState, change: SoundChange, bar: number): Partial<SoundState> {
  if (!isBeside(change)) {
    return change.kind === 'again' ? { change: FULL, again: bar, kept: false } : { change, kept: false };
  }
  switch (change.kind) {
    case 'tempo':
      // At its mark a climb has come to its end.
      return { tempo: change.tempo, climb: climb === null ? null : markAbove(change.tempo, climb) };
    case 'climb':
      return { climb: markAbove(tempo, change.to) };
    case 'feel':
      return { feel: change.feel };
    case 'band':
      return { band: { kit: change.kit, bass: change.bass } };
  }
}

/** The mark of a climb from a tempo; null where it lies no higher: so a page says that nothing climbs any more. */
export function markAbove(tempo: number | null, to: number): number | null {
  return to > (tempo ?? 0) ? to : null;
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
