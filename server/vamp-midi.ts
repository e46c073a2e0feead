import { chordSymbol } from '../shared-theory/chords.ts';
import { grooveOf, type Performance } from '../shared-theory/perform.ts';
import type { Voice } from '../shared-theory/sound/instrument.ts';
import { writeMidi, type PartNames } from '../shared-theory/sound/midi.ts';
import type { VoicedVamp } from '../shared-theory/vamps.ts';
import { fileWords } from './protocol/words/file-words.ts';
import { fill } from './protocol/words/fill.ts';

/** Names of a vamp's file and its parts: its chords and its groove, the guitar by its voice. */
export function partNames(vamp: VoicedVamp, voice: Voice): PartNames {
  const chords = vamp.slots.map(({ chord }) => chordSymbol(chord)).join(' ');
  const groove = grooveOf(vamp);
  const name = groove ? fill(fileWords.vamp, { chords, groove: groove.name }) : chords;
  return { name, guitar: fileWords.guitar[voice], bass: fileWords.bass, kit: fileWords.kit };
}

/** A vamp's performance as a MIDI file that carries its chords and its groove as name. */
export function vampMidi(vamp: VoicedVamp, performance: Performance, voice: Voice = 'steel'): Uint8Array {
  return writeMidi(vamp, performance, partNames(vamp, voice), voice);
}
