import { resolve } from 'node:path';
import { GROOVES, GrooveError, parseGroove, withOpening, type Groove } from '../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { PITCH_RANGE, VOICES, type Instrument } from '../../shared-theory/sound/instrument.ts';
import { parseVamp, type VoicedVamp } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';
import { choiceOption, numberOption, readArguments, UsageError } from '../command-line.ts';
import { consoleWords } from '../protocol/words/en.ts';
import { fill } from '../protocol/words/fill.ts';

const words = consoleWords.render;

const MOST_LOOPS = 64;

/** Files that a vamp can be written to, by the option that names them; null where none is asked for. */
export type RenderFiles = {
  /** The sound. */
  readonly out: string | null;
  /** The notes for a sequencer. */
  readonly midi: string | null;
  /** The notes for a notation program. */
  readonly musicxml: string | null;
};

/** One vamp, and who plays it how. */
export type VampRequest = {
  readonly what: 'vamp';
  readonly vamp: VoicedVamp;
  readonly groove: Groove;
  readonly chords: string;
  readonly loops: number;
  readonly instrument: Instrument;
  readonly parts: { readonly guitar: boolean; readonly kit: boolean; readonly bass: boolean };
  /** A player's small differences of time and loudness. */
  readonly human: boolean;
  readonly files: RenderFiles;
  readonly json: boolean;
};

/** What `render` is asked for: the catalogue of grooves, or one vamp. */
export type RenderRequest = { readonly what: 'grooves'; readonly json: boolean } | VampRequest;

/** Reads the arguments of `render`. UsageError, or ReadingError for the chords, says what was wrong and what would be right. */
export function readRenderRequest(args: readonly string[]): RenderRequest {
  const { options, positionals } = readArguments(args, {
    chords: 'value',
    beats: 'value',
    groove: 'value',
    'groove-text': 'value',
    tempo: 'value',
    loops: 'value',
    voice: 'value',
    pitch: 'value',
    'small-speaker': 'flag',
    kit: 'flag',
    bass: 'flag',
    'no-guitar': 'flag',
    human: 'flag',
    seed: 'value',
    out: 'value',
    midi: 'value',
    musicxml: 'value',
    grooves: 'flag',
    json: 'flag',
  });
  const { json, human, kit, bass } = options;
  if (positionals.length > 0) throw new UsageError(words.usage);
  if (options.grooves) return { what: 'grooves', json };
  const { chords, out = null, midi = null, musicxml = null } = options;
  const files = { out, midi, musicxml };
  const named = Object.values(files).filter((file) => file !== null);
  const groove = grooveOf(options.groove, options['groove-text']);
  if (chords === undefined || groove === null || (named.length === 0 && !json)) throw new UsageError(words.usage);
  if (new Set(named.map((file) => resolve(file))).size < named.length) throw new UsageError(words.oneFile);
  const parts = { guitar: !options['no-guitar'], kit, bass };
  if (!parts.guitar && !kit && !bass) throw new UsageError(words.nobodyPlays);
  const instrument: Instrument = {
    voice: choiceOption(options.voice ?? 'steel', 'voice', VOICES),
    pitch: options.pitch === undefined ? 440 : numberOption(options.pitch, 'pitch', ...PITCH_RANGE),
    smallSpeaker: options['small-speaker'],
  };
  const loops = options.loops === undefined ? 1 : numberOption(options.loops, 'loops', 1, MOST_LOOPS, true);
  const seed = options.seed === undefined ? 1 : numberOption(options.seed, 'seed', 0, Number.MAX_SAFE_INTEGER, true);
  const slots = parseVamp(chords, beatsOf(options.beats, chords, groove));
  const vamp = voice({ slots, groove, tempo: tempoOf(options.tempo, groove), seed, alternatingBass: true });
  return { what: 'vamp', vamp, groove, chords, loops, instrument, parts, human, files, json };
}

/** The groove of the catalogue, or one in the grid language, with an opening bar where chords could not be heard without; null for none. */
function grooveOf(id: string | undefined, text: string | undefined): Groove | null {
  if (id !== undefined && text !== undefined) throw new UsageError(words.twoGrooves);
  if (text !== undefined) return readText(text);
  if (id === undefined) return null;
  const ids = GROOVES.map((known) => known.id);
  return GROOVES[ids.indexOf(choiceOption(id, 'groove', ids))] ?? null;
}

function readText(text: string): Groove {
  try {
    return withOpening(parseGroove(text));
  } catch (error) {
    if (error instanceof GrooveError) throw new UsageError(error.message);
    throw error;
  }
}

/** Beats of each chord; a bar where nothing is said. */
function beatsOf(text: string | undefined, chords: string, groove: Groove): number {
  if (text === undefined) return BEATS_PER_BAR[groove.meter];
  if (/[|‖]/.test(chords)) throw new UsageError(words.beatsAndBars);
  return numberOption(text, 'beats', 1, 64, true);
}

/** The tempo asked for, within the groove's range; the middle of the range where none is. */
function tempoOf(text: string | undefined, groove: Groove): number {
  const [low, high] = groove.tempo;
  if (text === undefined) return Math.round((low + high) / 2);
  const tempo = numberOption(text, 'tempo', 1, 1000);
  if (tempo < low || tempo > high)
    throw new UsageError(fill(words.tempo, { groove: groove.id, low, high, found: text }));
  return tempo;
}
