import { QUALITIES } from '../../shared-theory/chords.ts';
import { grooveById, GROOVES, type Groove } from '../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { typedCrib } from '../../shared-theory/crib/typed.ts';
import { TUNINGS } from '../../shared-theory/neck/tunings.ts';
import type { TuningId } from '../../shared-theory/neck/tunings.ts';
import { POLICIES } from '../../shared-theory/truth.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';
import { choiceOption, numberOption, readArguments, runCommand, UsageError } from '../command-line.ts';
import { HIGHEST_CAPO, NAMINGS } from '../protocol/messages.ts';
import { cribWords } from '../protocol/words/crib-words.ts';
import { fill } from '../protocol/words/fill.ts';
import { cribJson } from './json.ts';
import { sheetNames } from './names.ts';
import { printCrib } from './print.ts';

const words = cribWords;

const GROOVE_IDS = GROOVES.map(({ id }) => id);

await runCommand((args) => {
  const { options, positionals } = readArguments(args, {
    policy: 'value',
    beats: 'value',
    capo: 'value',
    tuning: 'value',
    naming: 'value',
    groove: 'value',
    tempo: 'value',
    json: 'flag',
  });
  const [text, ...more] = positionals;
  if (text === undefined || more.length > 0) throw new UsageError(words.usage);
  const policy = choiceOption(options.policy ?? 'majors', 'policy', POLICIES);
  const groove = options.groove === undefined ? null : grooveById(choiceOption(options.groove, 'groove', GROOVE_IDS));
  const tempo = tempoOf(options.tempo, groove);
  const beats =
    options.beats === undefined && groove !== null
      ? BEATS_PER_BAR[groove.meter]
      : numberOption(options.beats ?? '4', 'beats', 1, 12, true);
  const capo = numberOption(options.capo ?? '0', 'capo', 0, HIGHEST_CAPO, true);
  const tuning = choiceOption(options.tuning ?? 'standard', 'tuning', Object.keys(TUNINGS) as TuningId[]);
  const naming = choiceOption(options.naming ?? 'english', 'naming', NAMINGS);
  const slots = parseVamp(text, beats, naming);
  const settings = { policy, qualities: QUALITIES, capo };
  const crib = inGroove(() => typedCrib(slots, settings, { tuning, capo }, { groove, tempo }));
  console.log(options.json ? JSON.stringify(cribJson(crib)) : printCrib(crib, sheetNames(naming)));
});

/** Beats a minute of the groove: those asked for, within its range, else its slowest; null where no groove is named. */
function tempoOf(text: string | undefined, groove: Groove | null): number | null {
  if (groove === null) {
    if (text !== undefined) throw new UsageError(words.tempoAlone);
    return null;
  }
  const [low, high] = groove.tempo;
  if (text === undefined) return low;
  const tempo = numberOption(text, 'tempo', 1, 1000);
  if (tempo < low || tempo > high)
    throw new UsageError(fill(words.tempo, { groove: groove.id, low, high, found: text }));
  return tempo;
}

/** Chords that the groove cannot play are called wrongly. */
function inGroove<T>(made: () => T): T {
  try {
    return made();
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(error.message);
    throw error;
  }
}
