import { isSameSound } from '../../shared-theory/different-chords.ts';
import type { Groove } from '../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { usualShape } from '../../shared-theory/neck.ts';
import { askableQuestions } from '../../shared-theory/questions/judges.ts';
import { KINDS, RHYTHM_KINDS } from '../../shared-theory/questions/question.ts';
import type { Kind, QuestionSettings } from '../../shared-theory/questions/question.ts';
import { guitarTruth } from '../../shared-theory/truth.ts';
import type { GuitarOptions, Truth } from '../../shared-theory/truth.ts';
import { mergedSlots, parseVamp, ReadingError } from '../../shared-theory/vamps.ts';
import type { Slot } from '../../shared-theory/vamps.ts';
import type { RoomSettings } from '../protocol/messages.ts';
import { beatKinds } from './beat-level.ts';
import type { Refusal } from './commands.ts';
import { refuse } from './commands.ts';
import type { EnteredRound, HeardRound } from './events.ts';
import { GUITAR_TEMPO, heardSlot, listed, questionSettings, settlerSlots } from './heard-round.ts';
import { grooveNamed } from './own-grooves.ts';

/** Which round of the teacher's guitar, under which settings. */
type Strummed = {
  readonly id: string;
  readonly settings: RoomSettings | QuestionSettings;
  /** Beat level by which it is asked about its groove; null in rounds of a time that asked for the strokes alone. */
  readonly beat: number | null;
  /** Grooves that may be named beside those of the catalogue. */
  readonly grooves: readonly Groove[];
};

/**
 * A round that the teacher plays: the chords as typed, sounded by the usual open shapes unless he says where the bass goes.
 * Corrected, it keeps the settings that it was asked under.
 */
export function guitarRound(
  { id, settings: kept, beat, grooves }: Strummed,
  entered: EnteredRound,
  seed: number,
): HeardRound | Refusal {
  const { chords, naming, tempo, directions } = entered;
  const groove = entered.groove === null ? null : grooveNamed(entered.groove, grooves);
  if (groove !== null && 'reason' in groove) return groove;
  const [low, high] = GUITAR_TEMPO;
  if (tempo !== null && !(tempo >= low && tempo <= high)) {
    return refuse('tempo-out-of-range', { found: tempo, low, high });
  }
  const meter = groove?.meter ?? '4/4';
  try {
    const typed = parseVamp(chords, BEATS_PER_BAR[meter], naming);
    const { slots, truth } = withoutRepeats(typed, { meter, directions, groove, tempo });
    const settings = questionSettings(kept);
    const voiced = slots.map((slot) => ({ ...slot, frets: usualShape(slot.chord) }));
    const ofGroove: readonly Kind[] = groove === null ? [] : beat === null ? ['strokes'] : beatKinds(beat);
    const kinds = KINDS.filter((kind) => !RHYTHM_KINDS.has(kind) || ofGroove.includes(kind));
    const askable = askableQuestions(truth, settings);
    const asked = beat === null ? kinds : listed(askable, kinds, beat);
    return {
      id,
      number: Number(id.slice(1)),
      source: 'guitar',
      level: null,
      seed,
      meter,
      tempo,
      grooveText: groove?.text ?? '',
      slots: voiced.map(heardSlot),
      settlers: settlerSlots(truth, meter),
      truth,
      // Nobody but the teacher silences a guitar: no phone could be told of it.
      questions: askable.filter(({ kind }) => kind !== 'drop-out' && asked.includes(kind) && worthAsking(kind, slots)),
      kinds,
      loops: 'any',
      settings,
      entered: { chords, naming, groove: entered.groove, tempo, directions },
      item: null,
      beat,
      contrast: null,
    };
  } catch (error) {
    if (error instanceof ReadingError) {
      const { place, found, suggestion } = error;
      return refuse('chords-not-readable', { place, found, suggestion });
    }
    if (error instanceof RangeError) return refuse('message-not-readable', { what: error.message });
    throw error;
  }
}

/** Where all stands on its root nobody is asked for a bass beside the root, and of triads alone nobody for a seventh. */
function worthAsking(kind: Kind, slots: readonly Slot[]): boolean {
  if (kind === 'bass') return slots.some(({ chord }) => chord.bass !== undefined);
  return kind !== 'seventh' || slots.some(({ chord }) => chord.addition !== undefined);
}

/** A chord typed again while its bass stays is the same chord going on: nobody hears a change there to be asked about. */
function withoutRepeats(
  typed: readonly Slot[],
  options: GuitarOptions,
): { readonly slots: readonly Slot[]; readonly truth: Truth } {
  const truth = guitarTruth(typed, options);
  const merged = mergedSlots(typed, (index) => {
    const [before, here] = [typed[index - 1], typed[index]];
    return before && here
      ? isSameSound(before.chord, here.chord) && truth.bass[index - 1] === truth.bass[index]
      : false;
  });
  if (merged.length === typed.length) return { slots: typed, truth };
  const slots = merged.map(({ slot }) => slot);
  const stated = options.directions;
  const directions = stated ? merged.slice(1).map(({ index }) => stated[index - 1] ?? 'usual') : null;
  return { slots, truth: guitarTruth(slots, { ...options, directions }) };
}
