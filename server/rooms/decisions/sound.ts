import type { SoundChange, SoundOrder } from '../../protocol/messages.ts';
import type { Allowed, CommandOf, Context, Decision } from '../commands.ts';
import { already, happens, refuse } from '../commands.ts';
import { liveTempos } from '../heard-round.ts';
import type { RoomState, SoundState } from '../state.ts';
import { runningRound } from './questions.ts';

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

/** Stops the sound. Without a page that holds it there is none: nothing to do. */
export function requestStop(context: Context): Decision {
  return context.soundHolder === null ? already() : order({ order: 'stop' });
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
  return happens([{ type: 'ChangeTook', round, change, bar }]);
}

/** The host page says that its sound ended. */
export function vampStopped(state: RoomState, { round }: CommandOf<'VampStopped'>, context: Context): Decision {
  if (heldElsewhere(context)) return refuse('sound-held-elsewhere');
  if (!state.sound.playing || state.sound.round !== round) return already();
  return happens([{ type: 'VampStopped', round }]);
}

/** Adds the order to stop to what is allowed, where something still plays. */
export function andStop(allowed: Allowed, state: RoomState): Allowed {
  return state.sound.playing ? { ...allowed, effects: [{ kind: 'order', order: { order: 'stop' } }] } : allowed;
}

function sameChange(change: SoundChange, sound: SoundState): boolean {
  if (change.kind === 'tempo') return sound.tempo === change.tempo;
  if (change.kind === 'hold') return sound.change.kind === 'hold' && sound.change.slot === change.slot;
  return sound.change.kind === change.kind;
}

function order(order: SoundOrder): Decision {
  return { ...happens([]), effects: [{ kind: 'order', order }] };
}

/** What a page reports is a fact, unless another page holds the sound by now. */
function heldElsewhere({ sender, soundHolder }: Context): boolean {
  return sender.role === 'host' && soundHolder !== null && soundHolder !== sender.page;
}
