import { chordSymbol } from '../shared-theory/chords.ts';
import { grooveOf, type Performance } from '../shared-theory/perform.ts';
import { writeMidi } from '../shared-theory/sound/midi.ts';
import type { VoicedVamp } from '../shared-theory/vamps.ts';
import { fileWords } from './protocol/words/en.ts';
import { fill } from './protocol/words/fill.ts';

/** A vamp's performance as a MIDI file that carries its chords and its groove as name. */
export function vampMidi(vamp: VoicedVamp, performance: Performance): Uint8Array {
  const chords = vamp.slots.map(({ chord }) => chordSymbol(chord)).join(' ');
  const groove = grooveOf(vamp);
  const name = groove ? fill(fileWords.vamp, { chords, groove: groove.name }) : chords;
  return writeMidi(vamp, performance, { name, part: fileWords.part });
}
