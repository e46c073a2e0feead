import { RHYTHM_KINDS, TAPPED_KINDS } from '../../../shared-theory/questions/question.ts';
import type { Kind } from '../../../shared-theory/questions/question.ts';
import { parseQuestionId } from '../../../shared-theory/questions/round-questions.ts';
import { meanwhileOf } from '../../../shared-theory/questions/script.ts';
import { isBeside } from '../../protocol/messages.ts';
import type { AskHow, BesideChange, ModeChange, Reason, SoundChange } from '../../protocol/messages.ts';
import { markAbove } from '../evolve-sound.ts';
import { liveTempos } from '../heard-round.ts';
import type { RoomState, Sheet, SoundState } from '../state.ts';
import { currentRound } from '../state.ts';

const WRITTEN: SoundChange = { kind: 'feel', feel: 'written' };
/** Two bars to find the beat, then two without it. */
const DROP_OUT: SoundChange = { kind: 'drop-out', after: 2 };

/** What a sound keeps from being heard, as a reason to refuse it; null where the question can be answered from it. */
export function hides(mode: ModeChange, kind: Kind): Reason | null {
  if (RHYTHM_KINDS.has(kind)) return hidesGroove(mode, kind) ? 'groove-asked' : null;
  switch (mode.kind) {
    case 'kit-only':
    case 'muted':
    // Comes from PlayEcho alone, while nothing is open; it may take late.
    case 'echo':
      return 'chord-asked';
    case 'root-alone':
    case 'chord-alone':
    case 'root-then-chord':
    case 'hold':
    case 'pair':
    case 'settler':
      return ofTheLoop(kind) ? 'loop-asked' : null;
    case 'bass-alone':
    case 'full':
    case 'again':
    case 'soft':
    case 'bass-forward':
    // For two bars only.
    case 'drop-out':
    case 'silence':
    // Comes from PlayBoth alone, while nothing is open.
    case 'both':
      return null;
  }
}

/** Whether of what is asked about the groove something does not sound, or sounds otherwise than it was written. */
function hidesGroove(mode: ModeChange, kind: Kind): boolean {
  const tapped = TAPPED_KINDS.has(kind);
  switch (mode.kind) {
    case 'kit-only':
    case 'bass-alone':
      // They keep the beat, and have none of the hand's strokes.
      return !tapped;
    case 'root-alone':
    case 'chord-alone':
    case 'root-then-chord':
    case 'echo':
      return true;
    case 'muted':
      return OF_WHAT_RINGS.has(kind);
    case 'hold':
    case 'pair':
      return kind === 'change-place';
    case 'bass-forward':
      return kind === 'accents';
    case 'silence':
      // Two bars of it are for remembering; of what is tapped along with nothing is left.
      return tapped;
    case 'full':
    case 'again':
    case 'soft':
    case 'settler':
    case 'drop-out':
    case 'both':
      return false;
  }
}

/** Kinds that are about which strokes ring, and where the chord changes: on muted strings nobody hears that. */
const OF_WHAT_RINGS: ReadonlySet<Kind> = new Set(['roles', 'opened', 'change-place']);

/** Whether another feel than was written would make another answer right: taps go on in any. */
export function isOfTheFeel(kind: Kind): boolean {
  return RHYTHM_KINDS.has(kind) && !TAPPED_KINDS.has(kind);
}

/** Whether it is asked which chords the loop has, one after the other: of some of them alone nobody hears that. */
function ofTheLoop(kind: Kind): boolean {
  return kind === 'count' || kind === 'order';
}

/** Why a change does not go with what is asked now, or waits to be; null where it does, or where nothing is. */
export function hidesWhatIsAsked(change: SoundChange, state: RoomState): Reason | null {
  const [open, ...asides] = kindsAsked(state);
  if (isBeside(change)) {
    const waits = state.awaited === null ? null : (parseQuestionId(state.awaited)?.kind ?? null);
    const asked = [...(open === undefined ? [] : [open]), ...asides];
    // What waits for silence is remembered at the tempo that sounded; the feel that comes only then is seen to as it takes.
    const timed = [...asked, ...(waits === null ? [] : [waits])].some((kind) => TAPPED_KINDS.has(kind));
    return missesTheGroove(change, asked, timed, state) ? 'groove-asked' : null;
  }
  if (open === undefined) return null;
  // What is asked from memory is asked of the silence.
  if (change.kind === 'silence' && state.open?.how === 'memory') return null;
  return hides(change, open);
}

/** Whether what is asked about the groove would be another answer once tempo, climb, feel or band have changed. */
function missesTheGroove(
  change: BesideChange,
  asked: readonly Kind[],
  timed: boolean,
  { sound, rounds, open }: RoomState,
): boolean {
  const tempo = open?.tempo ?? sound.tempo;
  switch (change.kind) {
    case 'tempo':
      return timed && change.tempo !== tempo;
    case 'climb':
      return timed && markAbove(tempo, change.to) !== null;
    case 'feel': {
      if (change.feel !== 'written' && asked.some(isOfTheFeel)) return true;
      // A feel that does not bear the tempo would change it.
      const heard = rounds.at(-1)?.heard;
      if (!timed || heard === undefined || tempo === null) return false;
      const [low, high] = liveTempos(heard, change.feel);
      return tempo < low || tempo > high;
    }
    case 'band':
      return false;
  }
}

/** Kinds that are asked now: what the class is asked, and what some are asked in its place. */
function kindsAsked({ open, sheets }: RoomState): readonly Kind[] {
  if (open === null) return [];
  const asides = [...open.instead.values()].flatMap((ask): Sheet[] => {
    const aside = ask === null ? undefined : sheets.get(ask);
    return aside === undefined ? [] : [aside];
  });
  return [open, ...asides].flatMap(({ question }) => parseQuestionId(question)?.kind ?? []);
}

/**
 * What the sound is brought to where a question opens: what usually sounds meanwhile, or where the room does not want that, the
 * whole of it in place of what would hide the answer; before the groove is asked about, the feel that was written; before it is
 * tapped, a tempo that stays; and where it is tapped through a silence, that. Empty where it stays as it is.
 */
export function soundsForAsking(state: RoomState, question: string, how: AskHow): readonly SoundChange[] {
  const { sound, settings, awaited } = state;
  const asked = parseQuestionId(question);
  // What still sounds of the round before is on its way to an end.
  if (!sound.playing || sound.round !== currentRound(state)?.heard.id) return [];
  if (asked === null || how === 'memory') return [];
  const { kind } = asked;
  const feel = isOfTheFeel(kind) && sound.feel !== 'written' ? [WRITTEN] : [];
  const level = TAPPED_KINDS.has(kind) && sound.climb !== null ? [staying(sound)] : [];
  const out: readonly SoundChange[] = kind === 'drop-out' ? [DROP_OUT] : [];
  const misleads = sound.change.kind === 'both' || hides(sound.change, kind) !== null;
  const wanted: SoundChange = settings.soundFollows ? meanwhileOf(asked) : misleads ? { kind: 'full' } : sound.change;
  // A silence that was asked for, and has not come yet, is called off by any other order.
  const stays = awaited === null && sameSound(wanted, sound);
  return [...feel, ...level, ...(stays ? [] : [wanted]), ...out];
}

/** What brings the sound back where a change took that does not go with what is asked. */
export function broughtBack(change: BesideChange, { sound, open }: RoomState): SoundChange {
  if (change.kind === 'climb') return staying(sound);
  // A feel may have brought its tempo with it: it comes back with the tempo that was asked about.
  if (change.kind === 'tempo' && open !== null && open.tempo !== null) return { kind: 'tempo', tempo: open.tempo };
  return WRITTEN;
}

/** A climb that ends where it is. */
function staying({ tempo }: SoundState): SoundChange {
  return { kind: 'climb', to: tempo ?? 0 };
}

/** The sound once changes have taken, as far as it can be asked about. */
export function soundAfter(sound: SoundState, changes: readonly SoundChange[]): Pick<SoundState, 'change' | 'feel'> {
  return changes.reduce<Pick<SoundState, 'change' | 'feel'>>(
    (now, change) =>
      !isBeside(change) ? { ...now, change } : change.kind === 'feel' ? { ...now, feel: change.feel } : now,
    sound,
  );
}

/** Whether a change would leave the sound as it is. Beginning again never does. */
export function sameSound(change: SoundChange, { change: now, tempo, climb, feel, band }: SoundState): boolean {
  // The fields of a change stand in the order of its schema.
  if (!isBeside(change)) return change.kind !== 'again' && JSON.stringify(change) === JSON.stringify(now);
  switch (change.kind) {
    case 'tempo':
      return tempo === change.tempo;
    case 'climb':
      return climb === markAbove(tempo, change.to);
    case 'feel':
      return feel === change.feel;
    case 'band':
      return band.kit === change.kit && band.bass === change.bass;
  }
}
