import { chordSymbol, parseChord, QUALITIES, soundsAs } from '../../shared-theory/chords.ts';
import type { Quality } from '../../shared-theory/chords.ts';
import { generate } from '../../shared-theory/generate.ts';
import { GROOVES } from '../../shared-theory/grooves.ts';
import { LEVELS } from '../../shared-theory/levels.ts';
import { withTempo } from '../../shared-theory/live.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { usualShape } from '../../shared-theory/neck.ts';
import { askableQuestions } from '../../shared-theory/questions/judges.ts';
import type { Kind, QuestionSettings } from '../../shared-theory/questions/question.ts';
import { guitarTruth } from '../../shared-theory/truth.ts';
import type { GuitarOptions, Truth } from '../../shared-theory/truth.ts';
import { mergedSlots, parseVamp, ReadingError } from '../../shared-theory/vamps.ts';
import type { Slot, VoicedVamp } from '../../shared-theory/vamps.ts';
import type { RoomSettings } from '../protocol/messages.ts';
import type { CommandOf, Refusal } from './commands.ts';
import { refuse } from './commands.ts';
import type { HeardRound } from './events.ts';
import type { RoomState } from './state.ts';

/** Kinds in the order of a round: rhythm first. */
const ROUND_ORDER: readonly Kind[] = ['strokes', 'direction', 'quality', 'root', 'keys'];
/** Tempos that a teacher may name for his own guitar, beats a minute. */
const GUITAR_TEMPO = [30, 300] as const;

/** A round that Hearsay plays, made for a level from a seed; none of the vamps heard last comes again. */
export function hostRound(state: RoomState, number: number, level: number, seed: number): HeardRound | Refusal {
  const found = LEVELS.find((each) => each.level === level);
  if (found === undefined) {
    const numbers = LEVELS.map((each) => each.level);
    return refuse('level-unknown', { found: level, low: Math.min(...numbers), high: Math.max(...numbers) });
  }
  const recent = state.rounds.filter(({ heard }) => heard.source === 'host').map(({ heard }) => vampOf(heard));
  const { vamp, truth } = generate({ level, seed, recent });
  // The pad has the class's qualities and the level's, whatever sounds: it may not tell.
  const settings = questionSettings(state.settings, found.qualities);
  return {
    id: `r${number}`,
    number,
    source: 'host',
    level,
    seed,
    meter: vamp.meter,
    tempo: vamp.tempo,
    grooveText: vamp.grooveText,
    slots: vamp.slots.map(({ chord, beats, frets }) => ({ chord: chordSymbol(chord), beats, frets })),
    truth,
    questions: askableQuestions(truth, settings).filter(({ kind }) => found.questions.includes(kind)),
    kinds: ROUND_ORDER.filter((kind) => found.questions.includes(kind)),
    settings,
  };
}

/** A round that the teacher plays: the chords as typed, sounded by the usual open shapes unless he says where the bass goes. */
export function guitarRound(
  state: RoomState,
  number: number,
  command: Omit<CommandOf<'StartGuitarRound'>, 'type' | 'id' | 'after'>,
  seed: number,
): HeardRound | Refusal {
  const { chords, tempo, directions } = command;
  const groove = GROOVES.find(({ id }) => id === command.groove) ?? null;
  if (command.groove !== null && groove === null) return refuse('groove-unknown', { found: command.groove });
  const [low, high] = GUITAR_TEMPO;
  if (tempo !== null && !(tempo >= low && tempo <= high)) {
    return refuse('tempo-out-of-range', { found: tempo, low, high });
  }
  const meter = groove?.meter ?? '4/4';
  try {
    const typed = parseVamp(chords, BEATS_PER_BAR[meter]);
    const { slots, truth } = withoutRepeats(typed, { meter, directions, groove: command.groove, tempo });
    const settings = questionSettings(state.settings);
    return {
      id: `r${number}`,
      number,
      source: 'guitar',
      level: null,
      seed,
      meter,
      tempo,
      grooveText: groove?.text ?? '',
      slots: slots.map(({ chord, beats }) => ({ chord: chordSymbol(chord), beats, frets: usualShape(chord) })),
      truth,
      questions: askableQuestions(truth, settings),
      kinds: ROUND_ORDER.filter((kind) => kind !== 'strokes' || groove !== null),
      settings,
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

/** A chord typed again while its bass stays is the same chord going on: nobody hears a change there to be asked about. */
function withoutRepeats(
  typed: readonly Slot[],
  options: GuitarOptions,
): { readonly slots: readonly Slot[]; readonly truth: Truth } {
  const truth = guitarTruth(typed, options);
  const merged = mergedSlots(typed, (index) => {
    const [before, here] = [typed[index - 1], typed[index]];
    return before && here ? soundsAs(before.chord, here.chord) && truth.bass[index - 1] === truth.bass[index] : false;
  });
  if (merged.length === typed.length) return { slots: typed, truth };
  const slots = merged.map(({ slot }) => slot);
  const stated = options.directions;
  const directions = stated ? merged.slice(1).map(({ index }) => stated[index - 1] ?? 'usual') : null;
  return { slots, truth: guitarTruth(slots, { ...options, directions }) };
}

/** Lowest and highest tempo that a round's sound may be brought to while it plays. */
export function liveTempos(round: HeardRound): readonly [number, number] {
  const vamp = vampOf(round);
  return [withTempo(vamp, 0).tempo, withTempo(vamp, Number.MAX_VALUE).tempo];
}

/** The part of a room's settings that a round keeps for its marks; `more` qualities stand on the pad as well. */
function questionSettings({ policy, qualities }: RoomSettings, more: readonly Quality[] = []): QuestionSettings {
  const chosen = qualities.flatMap((quality) => QUALITIES.find((each) => each === quality) ?? []);
  return { policy, qualities: [...chosen, ...more.filter((quality) => !chosen.includes(quality))] };
}

/** A round as a vamp again. */
function vampOf({ slots, meter, grooveText, tempo, seed }: HeardRound): VoicedVamp {
  const voiced = slots.map(({ chord, beats, frets }) => ({ chord: parseChord(chord), beats, frets }));
  return { slots: voiced, meter, grooveText, tempo: tempo ?? GUITAR_TEMPO[0], seed };
}
