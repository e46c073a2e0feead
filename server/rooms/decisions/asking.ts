import type { Kind } from '../../../shared-theory/questions/question.ts';
import { parseQuestionId } from '../../../shared-theory/questions/round-questions.ts';
import { meanwhileOf } from '../../../shared-theory/questions/script.ts';
import { isBeside } from '../../protocol/messages.ts';
import type { AskHow, ModeChange, Reason, SoundChange } from '../../protocol/messages.ts';
import { markAbove } from '../evolve-sound.ts';
import type { RoomState, Sheet, SoundState } from '../state.ts';
import { currentRound } from '../state.ts';

const WRITTEN: SoundChange = { kind: 'feel', feel: 'written' };

/** What a sound keeps from being heard, as a reason to refuse it; null where the question can be answered from it. */
function hides(mode: ModeChange, kind: Kind): Reason | null {
  switch (mode.kind) {
    case 'kit-only':
      // The kit has neither chords nor downs and ups.
      return kind === 'strokes' ? 'strokes-asked' : 'chord-asked';
    case 'muted':
      return kind === 'strokes' ? null : 'chord-asked';
    case 'bass-alone':
      return kind === 'strokes' ? 'strokes-asked' : null;
    case 'root-alone':
    case 'chord-alone':
    case 'root-then-chord':
      return kind === 'strokes' ? 'strokes-asked' : ofTheLoop(kind) ? 'loop-asked' : null;
    case 'hold':
    case 'pair':
    case 'settler':
      return ofTheLoop(kind) ? 'loop-asked' : null;
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

/** Whether it is asked which chords the loop has, one after the other: of some of them alone nobody hears that. */
function ofTheLoop(kind: Kind): boolean {
  return kind === 'count' || kind === 'order';
}

/** Why a change does not go with what is asked now; null where it does, or where nothing is. */
export function hidesWhatIsAsked(change: SoundChange, state: RoomState): Reason | null {
  const [open, ...asides] = kindsAsked(state);
  if (open === undefined) return null;
  if (isBeside(change)) {
    // In another feel the strokes are others: whoever is asked about them, on any phone, must hear those that were written.
    const swaps = change.kind === 'feel' && change.feel !== 'written';
    return swaps && [open, ...asides].includes('strokes') ? 'strokes-asked' : null;
  }
  return hides(change, open);
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
 * whole of it in place of what would hide the answer; before strokes are asked, the feel that was written. Empty where it stays as
 * it is.
 */
export function soundsForAsking(state: RoomState, question: string, how: AskHow): readonly SoundChange[] {
  const { sound, settings, awaited } = state;
  const asked = parseQuestionId(question);
  // What still sounds of the round before is on its way to an end.
  if (!sound.playing || sound.round !== currentRound(state)?.heard.id) return [];
  if (asked === null || how === 'memory') return [];
  const feel = asked.kind === 'strokes' && sound.feel !== 'written' ? [WRITTEN] : [];
  const misleads = sound.change.kind === 'both' || hides(sound.change, asked.kind) !== null;
  const wanted: SoundChange = settings.soundFollows ? meanwhileOf(asked) : misleads ? { kind: 'full' } : sound.change;
  // A silence that was asked for, and has not come yet, is called off by any other order.
  return awaited === null && sameSound(wanted, sound) ? feel : [...feel, wanted];
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
