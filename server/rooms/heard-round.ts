import { chordSymbol, QUALITIES, readSymbol } from '../../shared-theory/chords.ts';
import type { Quality } from '../../shared-theory/chords.ts';
import { withFeel } from '../../shared-theory/feels.ts';
import { withTempo } from '../../shared-theory/live.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { usualShape } from '../../shared-theory/neck.ts';
import { KINDS, RHYTHM_KINDS } from '../../shared-theory/questions/question.ts';
import type { Kind, QuestionSettings } from '../../shared-theory/questions/question.ts';
import type { RoundQuestion } from '../../shared-theory/questions/round-questions.ts';
import type { Truth } from '../../shared-theory/truth.ts';
import type { Meter, VoicedSlot, VoicedVamp } from '../../shared-theory/vamps.ts';
import type { Feel, RoomSettings } from '../protocol/messages.ts';
import { kindsOfBeat } from './beat-level.ts';
import type { HeardRound, HeardSlot } from './events.ts';

/** Tempos that a teacher may name for his own guitar, beats a minute. */
export const GUITAR_TEMPO = [30, 300] as const;

/** Kinds that can be opened wherever a groove with a tempo sounds, whatever the beat level asks. */
const ANYWHERE: readonly Kind[] = ['tempo', 'drop-out', 'together'];

/**
 * The kinds that a round lists. Of the groove those that its own beat level asks of it, or where `beat` is null those that were chosen;
 * and in any case what can be opened anywhere.
 */
export function listed(
  askable: readonly RoundQuestion[],
  kinds: readonly Kind[],
  beat: number | null,
): readonly Kind[] {
  const rhythm = beat === null ? kinds : kindsOfBeat(beat, new Set(askable.map(({ kind }) => kind)));
  return KINDS.filter((kind) => {
    if (!RHYTHM_KINDS.has(kind)) return kinds.includes(kind);
    return rhythm.includes(kind) || ANYWHERE.includes(kind);
  });
}

/** A slot as a round stores it. */
export function heardSlot({ chord, beats, frets }: VoicedSlot): HeardSlot {
  return { chord: chordSymbol(chord), beats, frets };
}

/** Each chord as it is played behind the loop: for a bar, in its usual shape. A note has no shape. */
export function settlerSlots({ settlers }: Truth, meter: Meter): HeardRound['settlers'] {
  return settlers.map(({ chord }) =>
    chord === null ? null : { chord, beats: BEATS_PER_BAR[meter], frets: usualShape(readSymbol(chord)) },
  );
}

/** Lowest and highest tempo that a round's sound may be brought to while it plays in a feel. */
export function liveTempos(round: HeardRound, feel: Feel): readonly [number, number] {
  const vamp = withFeel(vampOf(round), feel);
  return [withTempo(vamp, 0).tempo, withTempo(vamp, Number.MAX_VALUE).tempo];
}

/** The part of a room's settings that a round keeps for its marks; `more` qualities stand on the pad as well. */
export function questionSettings(
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
