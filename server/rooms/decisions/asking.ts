import type { Kind } from '../../../shared-theory/questions/question.ts';
import { parseQuestionId } from '../../../shared-theory/questions/round-questions.ts';
import { meanwhileOf } from '../../../shared-theory/questions/script.ts';
import type { AskHow, Reason, SoundChange } from '../../protocol/messages.ts';
import type { RoomState, SoundState } from '../state.ts';
import { currentRound } from '../state.ts';

/** What a sound keeps from being heard, as a reason to refuse it; null where the question can be answered from it. */
function hides(change: SoundChange, kind: Kind): Reason | null {
  const { kind: sounds } = change;
  if (kind === 'strokes') return sounds === 'bass-alone' || sounds === 'root-alone' ? 'strokes-asked' : null;
  return sounds === 'muted' ? 'chord-asked' : null;
}

/** Why a sound does not go with the question that is open; null where it does, or where none is. */
export function hidesWhatIsAsked(change: SoundChange, { open }: RoomState): Reason | null {
  const kind = open === null ? undefined : parseQuestionId(open.question)?.kind;
  return kind === undefined ? null : hides(change, kind);
}

/**
 * What the sound is brought to where a question opens: what usually sounds meanwhile, or where the room does not want that, the
 * whole of it in place of what would hide the answer. Null where it stays as it is.
 */
export function soundForAsking(state: RoomState, question: string, how: AskHow): SoundChange | null {
  const { sound, settings, awaited } = state;
  const asked = parseQuestionId(question);
  // What still sounds of the round before is on its way to an end.
  if (!sound.playing || sound.round !== currentRound(state)?.heard.id) return null;
  if (asked === null || how === 'memory') return null;
  const misleads = sound.change.kind === 'both' || hides(sound.change, asked.kind) !== null;
  const wanted: SoundChange = settings.soundFollows ? meanwhileOf(asked) : misleads ? { kind: 'full' } : sound.change;
  // A silence that was asked for, and has not come yet, is called off by any other order.
  return awaited === null && sameSound(wanted, sound) ? null : wanted;
}

/** Whether a change would leave the sound as it is. Beginning again never does. */
export function sameSound(change: SoundChange, { change: now, tempo }: SoundState): boolean {
  if (change.kind === 'tempo') return tempo === change.tempo;
  // The fields of a change stand in the order of its schema.
  return change.kind !== 'again' && JSON.stringify(change) === JSON.stringify(now);
}
