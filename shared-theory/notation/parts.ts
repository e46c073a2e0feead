import type { KitPiece, Performance } from '../perform.ts';
import { BASS_PROGRAM, CHANNEL, GUITAR_PROGRAM, KIT_KEY } from '../sound/general-midi.ts';
import type { Voice } from '../sound/instrument.ts';
import type { PartNames } from '../sound/midi.ts';
import type { VoicedVamp } from '../vamps.ts';
import { bassLine, guitarLine, kitInstrument, KIT_PIECES, kitLine } from './lines.ts';
import type { Line } from './measures.ts';
import type { Layout, Section } from './sections.ts';
import { element, elementWith, type Element } from './xml.ts';

/** Names and words on a score. */
export type ScoreWords = PartNames & {
  readonly pieces: Readonly<Record<KitPiece, string>>;
  /** Over a swung groove; empty where it is straight. */
  readonly swing: string;
  readonly palm: string;
  readonly half: string;
  /** The program that wrote it. */
  readonly software: string;
};

/** Instruments as MusicXML's list of sounds names them. */
const GUITAR_SOUND: Readonly<Record<Voice, string>> = {
  steel: 'pluck.guitar.steel-string',
  nylon: 'pluck.guitar.nylon-string',
  clean: 'pluck.guitar.electric',
};
const KIT_SOUND: Readonly<Record<KitPiece, string>> = {
  kick: 'drum.bass-drum',
  snare: 'drum.snare-drum',
  'closed-hat': 'metal.hi-hat',
  'open-hat': 'metal.hi-hat',
};

/** A part of the score: how it is listed, its clef, and its line in a section. */
export type Part = {
  readonly id: string;
  readonly listed: Element;
  readonly clef: Element;
  /** Whether its notes are pitches, which a key has signs for. */
  readonly pitched: boolean;
  readonly line: (section: Section) => Line;
};

type Instrument = {
  readonly id: string;
  readonly name: string;
  readonly sound: string;
  readonly channel: number;
  readonly program?: number;
  readonly key?: number;
};

/** A part in the list, its instruments with their General MIDI numbers, which MusicXML counts from 1. */
function listed(id: string, name: string, instruments: readonly Instrument[]): Element {
  return elementWith(
    'score-part',
    { id },
    element('part-name', name),
    ...instruments.map((each) =>
      elementWith(
        'score-instrument',
        { id: each.id },
        element('instrument-name', each.name),
        element('instrument-sound', each.sound),
      ),
    ),
    ...instruments.map((each) =>
      elementWith(
        'midi-instrument',
        { id: each.id },
        element('midi-channel', each.channel + 1),
        each.program !== undefined && element('midi-program', each.program + 1),
        each.key !== undefined && element('midi-unpitched', each.key + 1),
      ),
    ),
  );
}

/** A clef; strings sound an octave lower than a staff without the eight under its clef would say. */
function clef(sign: string, line: number | null, octave: number): Element {
  return element(
    'clef',
    element('sign', sign),
    line !== null && element('line', line),
    octave !== 0 && element('clef-octave-change', octave),
  );
}

/** The parts of a performance that play. */
export function partsOf(
  vamp: VoicedVamp,
  performance: Performance,
  words: ScoreWords,
  voice: Voice,
  layout: Layout,
  signature: number,
): readonly Part[] {
  const one = (id: string, name: string, sound: string, channel: number, program: number) =>
    listed(id, name, [{ id: `${id}-I1`, name, sound, channel, program }]);
  const parts: Part[] = [];
  const next = () => `P${parts.length + 1}`;
  if (performance.notes.length > 0) {
    const id = next();
    parts.push({
      id,
      listed: one(id, words.guitar, GUITAR_SOUND[voice], CHANNEL.guitar, GUITAR_PROGRAM[voice]),
      clef: clef('G', 2, -1),
      pitched: true,
      line: (section) => guitarLine(vamp, layout, section, signature, words),
    });
  }
  if (performance.bass && performance.bass.length > 0) {
    const id = next();
    parts.push({
      id,
      listed: one(id, words.bass, 'pluck.bass.electric', CHANNEL.bass, BASS_PROGRAM),
      clef: clef('F', 4, -1),
      pitched: true,
      line: (section) => bassLine(vamp, layout, section, signature),
    });
  }
  if (performance.kit && performance.kit.length > 0) {
    const id = next();
    const pieces = KIT_PIECES.map((piece) => ({
      id: kitInstrument(id, piece),
      name: words.pieces[piece],
      sound: KIT_SOUND[piece],
      channel: CHANNEL.kit,
      key: KIT_KEY[piece],
    }));
    parts.push({
      id,
      listed: listed(id, words.kit, pieces),
      clef: clef('percussion', null, 0),
      pitched: false,
      line: (section) => kitLine(layout, section, id),
    });
  }
  return parts;
}
