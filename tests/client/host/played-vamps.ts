import type { SoundChange, SoundSlot } from '../../../server/protocol/messages.ts';
import { chordSymbol, parseChord } from '../../../shared-theory/chords.ts';
import { usualShape } from '../../../shared-theory/neck.ts';
import { parseVamp, type VoicedSlot, type VoicedVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';
import type { LiveVamp } from '../../../client/host/played-slots.ts';

export function vampOf(chords: string, groove: string | null = 'quarter-downs', tempo = 100, beats = 4): VoicedVamp {
  return voice({ slots: parseVamp(chords, beats), groove, tempo, seed: 7 });
}

export function slotOf(symbol: string, beats = 4): VoicedSlot {
  const chord = parseChord(symbol);
  return { chord, beats, frets: usualShape(chord) };
}

function wired({ chord, beats, frets }: VoicedSlot): SoundSlot {
  return { chord: chordSymbol(chord), beats, frets };
}

/** Two readings as they travel: each chord for a bar. */
export function bothOf(wrong: string, right: string, beats = 4): Extract<SoundChange, { kind: 'both' }> {
  const reading = (text: string) => text.split(' ').map((symbol) => wired(slotOf(symbol, beats)));
  return { kind: 'both', ask: 'a1', wrong: reading(wrong), right: reading(right) };
}

/** Em D with C and A to settle it. */
export const SETTLED: LiveVamp = { ...vampOf('Em D'), settlers: [slotOf('C'), slotOf('A')] };
