import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { GROOVES, type Groove } from '../../../shared-theory/grooves.ts';
import { swingOf } from '../../../shared-theory/notation/directions.ts';
import type { ScoreWords } from '../../../shared-theory/notation/parts.ts';
import { perform, type Performance } from '../../../shared-theory/perform.ts';
import { SCORE_LOOPS, writeMusicXml } from '../../../shared-theory/sound/musicxml.ts';
import type { VoicedVamp } from '../../../shared-theory/vamps.ts';
import { readSymbol, type Chord } from '../../../shared-theory/chords.ts';
import { voice } from '../../../shared-theory/voice.ts';

const PIECES = { kick: 'Kick', snare: 'Snare', 'closed-hat': 'Closed hat', 'open-hat': 'Open hat' };

export const WORDS: ScoreWords = {
  name: 'A <vamp> & “more”',
  guitar: 'Guitar',
  bass: 'Bass',
  kit: 'Kit',
  pieces: PIECES,
  swing: '',
  palm: 'P.M.',
  half: 'half P.M.',
  software: 'Hearsay',
};

export type Score = { readonly vamp: VoicedVamp; readonly performance: Performance; readonly xml: string };

/** The score of a vamp, with the parts that `more` adds to its performance. */
export function scoreOf(vamp: VoicedVamp, more: (performance: Performance) => Performance = (same) => same): Score {
  const performance = more(perform(vamp, { loops: SCORE_LOOPS }));
  const swing = swingOf(vamp);
  const words = { ...WORDS, swing: swing ? `Swing ${swing.long}:${swing.short}` : '' };
  return { vamp, performance, xml: writeMusicXml(vamp, performance, words) };
}

/** Chords in a groove, each for a bar or for `beats`, at its lowest tempo. */
export function vampOf(
  groove: Groove,
  chords: readonly Chord[],
  beats: number = BEATS_PER_BAR[groove.meter],
): VoicedVamp {
  const slots = chords.map((chord) => ({ chord, beats }));
  return voice({ slots, groove, tempo: groove.tempo[0], seed: 1, alternatingBass: true });
}

export function vampIn(groove: Groove, symbols: string, beats?: number): VoicedVamp {
  return vampOf(groove, symbols.split(' ').map(readSymbol), beats);
}

/** A score in every groove. */
export function everyGroove(symbols: string): readonly (readonly [string, Score])[] {
  return GROOVES.map((groove) => [groove.id, scoreOf(vampIn(groove, symbols))]);
}
