import { chordSymbol } from '../../shared-theory/chords.ts';
import { playBoth } from '../../shared-theory/play-both.ts';
import type { VoicedSlot } from '../../shared-theory/vamps.ts';
import type { SoundSlot } from '../protocol/messages.ts';
import { vampOf } from './heard-round.ts';
import { questionOn, topWrongOn } from './marking.ts';
import type { RoomState, Sheet } from './state.ts';

/**
 * The most chosen wrong answer of a sheet as it would sound, and what sounds; null where nobody is wrong, or where the wrong
 * answer has no sound of its own.
 */
export function bothReadings(
  state: RoomState,
  sheet: Sheet,
): { readonly wrong: readonly SoundSlot[]; readonly right: readonly SoundSlot[] } | null {
  const top = sheet.how === 'aloud' ? null : topWrongOn(state, sheet);
  if (top === null) return null;
  const { round } = sheet;
  const { truth, settings } = round;
  const question = questionOn(sheet);
  const both = playBoth(vampOf(round), question, top.answer, { truth, settings });
  return both === null ? null : { wrong: both.wrong.map(soundSlot), right: both.right.map(soundSlot) };
}

function soundSlot({ chord, beats, frets }: VoicedSlot): SoundSlot {
  return { chord: chordSymbol(chord), beats, frets };
}
