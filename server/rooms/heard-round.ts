import { chordSymbol, QUALITIES, readSymbol } from '../../shared-theory/chords.ts';
import type { Quality } from '../../shared-theory/chords.ts';
import { contrastVamp } from '../../shared-theory/contrast.ts';
import type { Contrast } from '../../shared-theory/contrast.ts';
import { isSameSound } from '../../shared-theory/different-chords.ts';
import { withFeel } from '../../shared-theory/feels.ts';
import { generate } from '../../shared-theory/generate.ts';
import type { GeneratedVamp, GenerateRequest } from '../../shared-theory/generate.ts';
import type { Groove } from '../../shared-theory/grooves.ts';
import { FORMS } from '../../shared-theory/level.ts';
import type { Level } from '../../shared-theory/level.ts';
import { LEVELS } from '../../shared-theory/levels.ts';
import { withTempo } from '../../shared-theory/live.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { usualShape } from '../../shared-theory/neck.ts';
import { askableQuestions } from '../../shared-theory/questions/judges.ts';
import { levelQuestions } from '../../shared-theory/questions/level-questions.ts';
import { KINDS, RHYTHM_KINDS } from '../../shared-theory/questions/question.ts';
import type { Kind, QuestionSettings } from '../../shared-theory/questions/question.ts';
import type { RoundQuestion } from '../../shared-theory/questions/round-questions.ts';
import { seededRandom } from '../../shared-theory/random.ts';
import { guitarTruth } from '../../shared-theory/truth.ts';
import type { GuitarOptions, Truth } from '../../shared-theory/truth.ts';
import { mergedSlots, parseVamp, ReadingError } from '../../shared-theory/vamps.ts';
import type { Meter, Slot, VoicedSlot, VoicedVamp } from '../../shared-theory/vamps.ts';
import type { Feel, LessonItem, RoomSettings } from '../protocol/messages.ts';
import { beatKinds, kindsOfBeat } from './beat-level.ts';
import type { Refusal } from './commands.ts';
import { refuse } from './commands.ts';
import type { EnteredRound, HeardRound, HeardSlot } from './events.ts';
import { grooveNamed } from './own-grooves.ts';
import type { RoomState } from './state.ts';

/** Tempos that a teacher may name for his own guitar, beats a minute. */
const GUITAR_TEMPO = [30, 300] as const;

/** What a round that Hearsay plays is to ask. */
export type Wanted = {
  readonly level: number;
  /** Item of the planned lesson that it plays; null for one that asks what its level asks. */
  readonly item: LessonItem | null;
  /** The groove that it is played in; null for one that the level draws. */
  readonly groove: Groove | null;
  /** The contrast pair of which it plays one; null for a round beside all pairs. */
  readonly contrast: Contrast | null;
};

/** Kinds that can be opened wherever a groove with a tempo sounds, whatever the beat level asks. */
const ANYWHERE: readonly Kind[] = ['tempo', 'drop-out', 'together'];

/** A round that Hearsay plays, made for a level from a seed; none of the vamps heard last comes again. */
export function hostRound(
  state: RoomState,
  number: number,
  { level, item, groove, contrast }: Wanted,
  seed: number,
): HeardRound | Refusal {
  const found = LEVELS.find((each) => each.level === level);
  if (found === undefined) {
    const numbers = LEVELS.map((each) => each.level);
    return refuse('level-unknown', { found: level, low: Math.min(...numbers), high: Math.max(...numbers) });
  }
  const beat = state.settings.beatLevel;
  // Of a pair's groove nothing is asked but what tells its two sides apart.
  const ofGroove = contrast === null ? beatKinds(beat) : [];
  const wanted: readonly string[] = item === null ? [...ofChords(found.questions), ...ofGroove] : item.kinds;
  const kinds = KINDS.filter((kind) => wanted.includes(kind) || kind === contrast?.kind);
  const made =
    contrast === null
      ? generated({ level, seed, recent: vampsOf(state.rounds), beat, counting: kinds.includes('count') }, groove)
      : contrasted(state, level, contrast, seed);
  if ('reason' in made) return made;
  const { vamp, truth } = made;
  // The pad has the class's qualities and the level's, whatever sounds: it may not tell.
  const settings = questionSettings(state.settings, found.qualities);
  const asked = listed(askableQuestions(truth, settings), kinds, item === null && contrast === null ? beat : null);
  return {
    id: `r${number}`,
    number,
    source: 'host',
    level,
    seed: made.seed,
    meter: vamp.meter,
    tempo: vamp.tempo,
    grooveText: vamp.grooveText,
    slots: vamp.slots.map(heardSlot),
    settlers: settlerSlots(truth, vamp.meter),
    truth,
    questions: levelQuestions(truth, settings, asked),
    kinds,
    loops: loopsOf(found, kinds),
    settings,
    entered: null,
    item: item?.item ?? null,
    beat,
    contrast: contrast?.id ?? null,
  };
}

function ofChords(kinds: readonly Kind[]): readonly Kind[] {
  return kinds.filter((kind) => !RHYTHM_KINDS.has(kind));
}

/**
 * The kinds that a round lists. Of the groove those that its own beat level asks of it, or where `beat` is null those that were chosen;
 * and in any case what can be opened anywhere.
 */
function listed(askable: readonly RoundQuestion[], kinds: readonly Kind[], beat: number | null): readonly Kind[] {
  const rhythm = beat === null ? kinds : kindsOfBeat(beat, new Set(askable.map(({ kind }) => kind)));
  return KINDS.filter((kind) => {
    if (!RHYTHM_KINDS.has(kind)) return kinds.includes(kind);
    return rhythm.includes(kind) || ANYWHERE.includes(kind);
  });
}

function vampsOf(rounds: RoomState['rounds']): readonly VoicedVamp[] {
  return rounds.filter(({ heard }) => heard.source === 'host').map(({ heard }) => vampOf(heard));
}

/**
 * One of a pair, whichever the seed draws. After a round of the same pair and level it is the same loop at the same tempo: made by that
 * round's own seed, from what had been heard before it.
 */
function contrasted({ rounds }: RoomState, level: number, { id }: Contrast, seed: number): GeneratedVamp | Refusal {
  const others = rounds.findLastIndex(({ heard }) => heard.contrast !== id || heard.level !== level);
  const before = rounds.slice(0, others + 1);
  const first = rounds[others + 1]?.heard.seed ?? seed;
  const side = seededRandom(seed, 'side of a pair')() < 0.5 ? 0 : 1;
  return unlessUnheard(() => contrastVamp({ contrast: id, side, level, seed: first, recent: vampsOf(before) }));
}

/** A vamp in a groove, or where its chords could not be heard in it, why. */
function generated(request: Omit<GenerateRequest, 'groove'>, groove: Groove | null): GeneratedVamp | Refusal {
  return unlessUnheard(() => generate(groove === null ? request : { ...request, groove }));
}

function unlessUnheard(make: () => GeneratedVamp): GeneratedVamp | Refusal {
  try {
    return make();
  } catch (error) {
    if (error instanceof RangeError) return refuse('groove-unheard', { what: error.message });
    throw error;
  }
}

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
      questions: askable.filter(({ kind }) => asked.includes(kind) && worthAsking(kind, slots)),
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

/** Which numbers of chords loops of a level have; where chords are counted, a level has others as well. */
function loopsOf({ balance }: Level, kinds: readonly Kind[]): HeardRound['loops'] {
  const { forms } = kinds.includes('count') ? balance.counting : balance;
  const drawn = FORMS.filter((form) => (forms[form] ?? 0) > 0);
  if (drawn.every((form) => form === 'pair')) return 'two';
  return drawn.every((form) => form === 'pair' || form === 'held') ? 'one-or-two' : 'any';
}

function heardSlot({ chord, beats, frets }: VoicedSlot): HeardSlot {
  return { chord: chordSymbol(chord), beats, frets };
}

/** Each chord as it is played behind the loop: for a bar, in its usual shape. A note has no shape. */
function settlerSlots({ settlers }: Truth, meter: Meter): HeardRound['settlers'] {
  return settlers.map(({ chord }) =>
    chord === null ? null : { chord, beats: BEATS_PER_BAR[meter], frets: usualShape(readSymbol(chord)) },
  );
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

/** Lowest and highest tempo that a round's sound may be brought to while it plays in a feel. */
export function liveTempos(round: HeardRound, feel: Feel): readonly [number, number] {
  const vamp = withFeel(vampOf(round), feel);
  return [withTempo(vamp, 0).tempo, withTempo(vamp, Number.MAX_VALUE).tempo];
}

/** The part of a room's settings that a round keeps for its marks; `more` qualities stand on the pad as well. */
function questionSettings(
  { policy, qualities, capo = 0, slashIsNew = false }: RoomSettings | QuestionSettings,
  more: readonly Quality[] = [],
): QuestionSettings {
  const chosen = qualities.flatMap((quality) => QUALITIES.find((each) => each === quality) ?? []);
  return { policy, qualities: [...chosen, ...more.filter((quality) => !chosen.includes(quality))], capo, slashIsNew };
}

/** A round as a vamp again. */
export function vampOf({ slots, meter, grooveText, tempo, seed }: HeardRound): VoicedVamp {
  const voiced = slots.map(({ chord, beats, frets }) => ({ chord: readSymbol(chord), beats, frets }));
  return { slots: voiced, meter, grooveText, tempo: tempo ?? GUITAR_TEMPO[0], seed };
}
