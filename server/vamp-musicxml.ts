import { swingOf } from '../shared-theory/notation/directions.ts';
import type { Performance } from '../shared-theory/perform.ts';
import type { Voice } from '../shared-theory/sound/instrument.ts';
import { writeMusicXml } from '../shared-theory/sound/musicxml.ts';
import type { VoicedVamp } from '../shared-theory/vamps.ts';
import { fileWords } from './protocol/words/file-words.ts';
import { fill } from './protocol/words/fill.ts';
import { partNames } from './vamp-midi.ts';

/** A vamp's performance, exact and of at least `SCORE_LOOPS` loops, as a MusicXML file for notation programs. */
export function vampMusicXml(vamp: VoicedVamp, performance: Performance, voice: Voice = 'steel'): Uint8Array {
  const { kitPieces: pieces, palm, half, software } = fileWords;
  const swing = swingOf(vamp);
  const words = {
    ...partNames(vamp, voice),
    pieces,
    swing: swing ? fill(fileWords.swing, { long: swing.long, short: swing.short }) : '',
    palm,
    half,
    software,
  };
  return new TextEncoder().encode(writeMusicXml(vamp, performance, words, voice));
}
