import { parseQuestionId } from '../../../shared-theory/questions/round-questions.ts';
import type { SoundChange, SoundOrder } from '../../protocol/messages.ts';
import type { Allowed, CommandOf, Context, Decision } from '../commands.ts';
import { already, happens, refuse } from '../commands.ts';
import type { NewEvent } from '../events.ts';
import { liveTempos } from '../heard-round.ts';
import type { RoomState, SoundState } from '../state.ts';
import { runningRound } from './running-round.ts';

/** One host page holds the sound; another must ask to take it over. */
export function holdSound(command: CommandOf<'HoldSound'>, { sender, soundHolder }: Context): Decision {
  if (sender.role !== 'host') return refuse('not-teacher');
  if (soundHolder !== null && soundHolder !== sender.page && !command.takeOver) return refuse('sound-held-elsewhere');
  return { ...happens([]), effects: [{ kind: 'hold-sound', page: sender.page }] };
}

/** Plays the running round's vamp, from its count-in. */
export function requestPlay(state: RoomState, { round }: CommandOf<'RequestPlay'>, context: Context): Decision {
  const running = runningRound(state, round);
  if ('reason' in running) return running;
  if (running.heard.source === 'guitar') return refuse('nothing-plays');
  if (context.soundHolder === null) return refuse('no-host-sound');
  return order({ order: 'play', round });
}

/** Changes the sound that plays, from its next bar line on. */
export function requestChange(state: RoomState, command: CommandOf<'RequestChange'>, context: Context): Decision {
  const { round, change } = command;
  const running = runningRound(state, round);
  if ('reason' in running) return running;
  if (!state.sound.playing || state.sound.round !== round) return refuse('nothing-plays');
  if (context.soundHolder === null) return refuse('no-host-sound');
  if (change.kind === 'bass-alone' && asksForStrokes(state)) return refuse('strokes-asked');
  const { slots } = running.heard;
  if (change.kind === 'hold' && slots[change.slot] === undefined) {
    return refuse('message-not-readable', { what: `slot ${change.slot} of ${slots.length}` });
  }
  if (change.kind === 'tempo') {
    const [low, high] = liveTempos(running.heard);
    const { tempo } = change;
    if (!(tempo >= low && tempo <= high)) return refuse('tempo-out-of-range', { found: tempo, low, high });
  }
  return order({ order: 'change', round, change });
}

/** Stops the sound. Where no page holds it, what the log still takes for sounding has stopped. */
export function requestStop(state: RoomState, context: Context): Decision {
  return context.soundHolder === null ? happens(silenced(state)) : order({ order: 'stop' });
}

/** The host page says that the vamp began to sound. */
export function vampStarted(state: RoomState, command: CommandOf<'VampStarted'>, context: Context): Decision {
  const { round, tempo } = command;
  if (heldElsewhere(context)) return refuse('sound-held-elsewhere');
  const running = runningRound(state, round);
  if ('reason' in running) return running;
  if (running.heard.source === 'guitar') return refuse('nothing-plays');
  const { sound } = state;
  if (sound.playing && sound.round === round && sound.tempo === tempo) return already();
  return happens([{ type: 'VampStarted', round, tempo }]);
}

/** The host page says that a change sounds, and from which bar on. */
export function changeTook(state: RoomState, command: CommandOf<'ChangeTook'>, context: Context): Decision {
  const { round, change, bar } = command;
  if (heldElsewhere(context)) return refuse('sound-held-elsewhere');
  if (!state.sound.playing || state.sound.round !== round) return refuse('nothing-plays');
  if (sameChange(change, state.sound)) return already();
  const took = happens([{ type: 'ChangeTook', round, change, bar }]);
  // Asked for before the question opened, and only now on a bar line.
  return change.kind === 'bass-alone' && asksForStrokes(state) ? ordering(took, full(round)) : took;
}

/** The host page says that its sound ended. */
export function vampStopped(state: RoomState, { round }: CommandOf<'VampStopped'>, context: Context): Decision {
  if (heldElsewhere(context)) return refuse('sound-held-elsewhere');
  if (!state.sound.playing || state.sound.round !== round) return already();
  return happens([{ type: 'VampStopped', round }]);
}

/**
 * Adds the end of the sound to what is allowed: the order to the page that holds it, which may have begun to play without
 * having said so yet; without such a page the fact.
 */
export function andStop(allowed: Allowed, state: RoomState, { soundHolder }: Context): Allowed {
  return soundHolder === null
    ? { ...allowed, events: [...silenced(state), ...allowed.events] }
    : ordering(allowed, { order: 'stop' });
}

/** Adds the order back to full where a question on the strokes opens while the bass sounds alone. */
export function andFull(allowed: Allowed, { sound }: RoomState): Allowed {
  return sound.playing && sound.round !== null && sound.change.kind === 'bass-alone'
    ? ordering(allowed, full(sound.round))
    : allowed;
}

/** Whether a question on the strokes is open: the bass alone has none to hear. */
function asksForStrokes({ open }: RoomState): boolean {
  return open !== null && parseQuestionId(open.question)?.kind === 'strokes';
}

function silenced({ sound }: RoomState): NewEvent[] {
  return sound.playing && sound.round !== null ? [{ type: 'VampStopped', round: sound.round }] : [];
}

function full(round: string): SoundOrder {
  return { order: 'change', round, change: { kind: 'full' } };
}

function sameChange(change: SoundChange, sound: SoundState): boolean {
  if (change.kind === 'tempo') return sound.tempo === change.tempo;
  if (change.kind === 'hold') return sound.change.kind === 'hold' && sound.change.slot === change.slot;
  return sound.change.kind === change.kind;
}

function order(order: SoundOrder): Decision {
  return ordering(happens([]), order);
}

/** Nobody hears it where no page holds the sound. */
function ordering(allowed: Allowed, order: SoundOrder): Allowed {
  return { ...allowed, effects: [{ kind: 'order', order }] };
}

/** What a page reports is a fact, unless another page holds the sound by now. */
function heldElsewhere({ sender, soundHolder }: Context): boolean {
  return sender.role === 'host' && soundHolder !== null && soundHolder !== sender.page;
}
