import { resolve } from 'node:path';
import { GROOVES, type Groove } from '../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { parseVamp, type VoicedVamp } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';
import { choiceOption, numberOption, readArguments, UsageError } from '../command-line.ts';
import { consoleWords } from '../protocol/words/en.ts';
import { fill } from '../protocol/words/fill.ts';

const words = consoleWords.render;

/** The voices that stand: a steel-string guitar. */
const VOICES = ['steel'] as const;

const MOST_LOOPS = 64;

/** What `render` is asked for: the catalogue of grooves, or one vamp. */
export type RenderRequest =
  | { readonly what: 'grooves'; readonly json: boolean }
  | {
      readonly what: 'vamp';
      readonly vamp: VoicedVamp;
      readonly groove: Groove;
      readonly chords: string;
      readonly loops: number;
      /** File for the sound. */
      readonly out: string | null;
      /** File for the notes. */
      readonly midi: string | null;
      readonly json: boolean;
    };

/** Reads the arguments of `render`. UsageError, or ReadingError for the chords, says what was wrong and what would be right. */
export function readRenderRequest(args: readonly string[]): RenderRequest {
  const { options, positionals } = readArguments(args, {
    chords: 'value',
    beats: 'value',
    groove: 'value',
    tempo: 'value',
    loops: 'value',
    voice: 'value',
    seed: 'value',
    out: 'value',
    midi: 'value',
    grooves: 'flag',
    json: 'flag',
  });
  const { json } = options;
  if (positionals.length > 0) throw new UsageError(words.usage);
  if (options.grooves) return { what: 'grooves', json };
  const { chords } = options;
  const out = options.out ?? null;
  const midi = options.midi ?? null;
  if (chords === undefined || options.groove === undefined || (out === null && midi === null && !json))
    throw new UsageError(words.usage);
  if (out !== null && midi !== null && resolve(out) === resolve(midi)) throw new UsageError(words.oneFile);
  const id = choiceOption(
    options.groove,
    'groove',
    GROOVES.map((known) => known.id),
  );
  const groove = GROOVES.find((known) => known.id === id);
  if (!groove) throw new UsageError(words.usage);
  choiceOption(options.voice ?? 'steel', 'voice', VOICES);
  if (options.beats !== undefined && /[|‖]/.test(chords)) throw new UsageError(words.beatsAndBars);
  const beats =
    options.beats === undefined ? BEATS_PER_BAR[groove.meter] : numberOption(options.beats, 'beats', 1, 64, true);
  const loops = options.loops === undefined ? 1 : numberOption(options.loops, 'loops', 1, MOST_LOOPS, true);
  const seed = options.seed === undefined ? 1 : numberOption(options.seed, 'seed', 0, Number.MAX_SAFE_INTEGER, true);
  const slots = parseVamp(chords, beats);
  const vamp = voice({ slots, groove: id, tempo: tempoOf(options.tempo, groove), seed, alternatingBass: true });
  return { what: 'vamp', vamp, groove, chords, loops, out, midi, json };
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
