import { TAPPED_KINDS } from '../../../shared-theory/questions/question.ts';
import type { Kind } from '../../../shared-theory/questions/question.ts';
import { parseQuestionId } from '../../../shared-theory/questions/round-questions.ts';
import { isBeside } from '../../protocol/messages.ts';
import type { SoundChange } from '../../protocol/messages.ts';
import type { Allowed, CommandOf, Context, Decision, Refusal } from '../commands.ts';
import { already, happens, refuse } from '../commands.ts';
import type { HeardRound, NewEvent } from '../events.ts';
import { liveTempos } from '../heard-round.ts';
import type { RoomState, SoundState } from '../state.ts';
import { broughtBack, hidesWhatIsAsked, isOfTheFeel, sameSound, soundAfter, soundsForAsking } from './asking.ts';
import { change as changing, ordering } from './orders.ts';
import { withAwaited } from './questions.ts';
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
  return ordering(happens(notAwaited(state, round)), { order: 'play', round });
}

/** What is played for a question, and never asked for by itself. */
const PLAYED_BY: Readonly<Partial<Record<SoundChange['kind'], string>>> = {
  both: 'both readings are played by PlayBoth, for a question',
  echo: 'a grid is played by PlayEcho, for a question',
};

/** Changes the sound that plays, from its next bar line on. */
export function requestChange(state: RoomState, command: CommandOf<'RequestChange'>, context: Context): Decision {
  const { round, change } = command;
  const running = runningRound(state, round);
  if ('reason' in running) return running;
  if (!state.sound.playing || state.sound.round !== round) return refuse('nothing-plays');
  if (context.soundHolder === null) return refuse('no-host-sound');
  const playing = PLAYED_BY[change.kind];
  if (playing !== undefined) return refuse('message-not-readable', { what: playing });
  const hidden = hidesWhatIsAsked(change, state);
  if (hidden !== null) return refuse(hidden);
  const fault = unplayable(change, running.heard, state.sound);
  if (fault !== null) return fault;
  // Whoever wants to hear something else does not wait for silence any more.
  const still = !isBeside(change) && change.kind !== 'silence' ? notAwaited(state, round) : [];
  return ordering(happens(still), changing(round, change));
}

/** A tone on the host page: to tune by, or to judge the speaker. Beside a vamp nobody could. */
export function requestTone(state: RoomState, { tone }: CommandOf<'RequestTone'>, context: Context): Decision {
  if (context.soundHolder === null) return refuse('no-host-sound');
  if (state.sound.playing) return refuse('vamp-plays');
  return ordering(happens([]), { order: 'tone', tone });
}

/** Stops the sound. Where no page holds it, what the log still takes for sounding has stopped. */
export function requestStop(state: RoomState, context: Context): Decision {
  if (context.soundHolder !== null) return ordering(happens([]), { order: 'stop' });
  return withAwaited(happens(silenced(state)), state);
}

/** The host page says that the vamp began to sound. */
export function vampStarted(state: RoomState, command: CommandOf<'VampStarted'>, context: Context): Decision {
  const { round, tempo } = command;
  if (heldElsewhere(context)) return refuse('sound-held-elsewhere');
  const running = runningRound(state, round);
  if ('reason' in running) return running;
  if (running.heard.source === 'guitar') return refuse('nothing-plays');
  // Told twice, nothing has changed since. A page that has come anew plays as a round begins, whatever sounded before.
  if (isAsBegun(state, round, tempo)) return already();
  const began = happens([{ type: 'VampStarted', round, tempo }]);
  // It was to fall silent, and has begun anew instead.
  return state.awaited === null ? began : ordering(began, changing(round, { kind: 'silence' }));
}

/** Whether a round sounds at a tempo as it does when it begins: nothing was changed since. */
function isAsBegun({ sound, settings }: RoomState, round: string, tempo: number): boolean {
  const { playing, change, climb, feel, band } = sound;
  const begun = playing && sound.round === round && sound.tempo === tempo && change.kind === 'full';
  const alone = climb === null && feel === 'written';
  return begun && alone && band.kit === settings.band.kit && band.bass === settings.band.bass;
}

/** The host page says that a change sounds, and from which bar on. */
export function changeTook(state: RoomState, command: CommandOf<'ChangeTook'>, context: Context): Decision {
  const { round, change, bar } = command;
  if (heldElsewhere(context)) return refuse('sound-held-elsewhere');
  const { sound } = state;
  if (!sound.playing || sound.round !== round) return refuse('nothing-plays');
  if (change.kind === 'again' ? sound.again === bar : sameSound(change, sound)) return already();
  const spoiled = spoilsWhatWaits(change, state);
  const took = happens([{ type: 'ChangeTook', round, change, bar }, ...(spoiled ? notAwaited(state, round) : [])]);
  const { open } = state;
  // It was asked for before the question opened, and comes only now on a bar line.
  if (open === null || hidesWhatIsAsked(change, state) === null) return took;
  if (isBeside(change)) return ordering(took, changing(round, broughtBack(change, state)));
  const now = { ...state, sound: { ...sound, ...soundAfter(sound, [change]) } };
  const fitting = soundsForAsking(now, open.question, 'phones');
  return ordering(took, ...fitting.map((each) => changing(round, each)));
}

/**
 * What waits for silence would be remembered in the feel that comes only now, and be marked by the one that was written; or at a tempo
 * that nobody has heard.
 */
function spoilsWhatWaits(change: SoundChange, { awaited, sound }: RoomState): boolean {
  const kind = kindOf(awaited);
  if (kind === null) return false;
  if (change.kind === 'feel') return change.feel !== 'written' && isOfTheFeel(kind);
  return change.kind === 'tempo' && TAPPED_KINDS.has(kind) && change.tempo !== sound.tempo;
}

/** The host page says that its sound ended. */
export function vampStopped(state: RoomState, { round }: CommandOf<'VampStopped'>, context: Context): Decision {
  if (heldElsewhere(context)) return refuse('sound-held-elsewhere');
  if (!state.sound.playing || state.sound.round !== round) return already();
  return withAwaited(happens([{ type: 'VampStopped', round }]), state);
}

/** The host page says that two bars have passed unheard: what waited for it opens. */
export function silenceKept(state: RoomState, { round }: CommandOf<'SilenceKept'>, context: Context): Decision {
  if (heldElsewhere(context)) return refuse('sound-held-elsewhere');
  const { sound } = state;
  if (!sound.playing || sound.round !== round || sound.change.kind !== 'silence') return refuse('nothing-plays');
  return sound.kept ? already() : withAwaited(happens([{ type: 'SilenceKept', round }]), state);
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

/** Why a change cannot be played in a round; null where it can. */
function unplayable(change: SoundChange, round: HeardRound, now: SoundState): Refusal | null {
  const { slots, settlers } = round;
  if (change.kind === 'tempo') {
    const [low, high] = liveTempos(round, now.feel);
    const { tempo } = change;
    return tempo >= low && tempo <= high ? null : refuse('tempo-out-of-range', { found: tempo, low, high });
  }
  if (change.kind === 'climb') {
    const [low, high] = liveTempos(round, now.feel);
    const { to } = change;
    if (to < low || to > high) return refuse('tempo-out-of-range', { found: to, low, high });
    const tempo = now.tempo ?? low;
    return to > tempo ? null : refuse('climb-not-up', { found: to, tempo, high });
  }
  if (change.kind === 'settler') {
    return settlers[change.index] === undefined ? refuse('settler-unknown', { found: change.index + 1 }) : null;
  }
  if (!('slot' in change)) return null;
  // The first chord is one of every pair.
  const least = change.kind === 'pair' ? 1 : 0;
  if (change.slot >= least && slots[change.slot] !== undefined) return null;
  return refuse('message-not-readable', { what: `slot ${change.slot} of ${slots.length}` });
}

function kindOf(question: string | null): Kind | null {
  return question === null ? null : (parseQuestionId(question)?.kind ?? null);
}

function notAwaited({ awaited }: RoomState, round: string): NewEvent[] {
  return awaited === null ? [] : [{ type: 'MemoryDropped', round }];
}

function silenced({ sound }: RoomState): NewEvent[] {
  return sound.playing && sound.round !== null ? [{ type: 'VampStopped', round: sound.round }] : [];
}

/** What a page reports is a fact, unless another page holds the sound by now. */
function heldElsewhere({ sender, soundHolder }: Context): boolean {
  return sender.role === 'host' && soundHolder !== null && soundHolder !== sender.page;
}
