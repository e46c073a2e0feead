import { QUALITIES } from '../../shared-theory/chords.ts';
import { typedCrib } from '../../shared-theory/crib/typed.ts';
import { TUNINGS } from '../../shared-theory/neck/tunings.ts';
import type { TuningId } from '../../shared-theory/neck/tunings.ts';
import { POLICIES } from '../../shared-theory/truth.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';
import { choiceOption, numberOption, readArguments, runCommand, UsageError } from '../command-line.ts';
import { HIGHEST_CAPO, NAMINGS } from '../protocol/messages.ts';
import { cribWords } from '../protocol/words/crib-words.ts';
import { cribJson } from './json.ts';
import { sheetNames } from './names.ts';
import { printCrib } from './print.ts';

await runCommand((args) => {
  const { options, positionals } = readArguments(args, {
    policy: 'value',
    beats: 'value',
    capo: 'value',
    tuning: 'value',
    naming: 'value',
    json: 'flag',
  });
  const [text, ...more] = positionals;
  if (text === undefined || more.length > 0) throw new UsageError(cribWords.usage);
  const policy = choiceOption(options.policy ?? 'majors', 'policy', POLICIES);
  const beats = numberOption(options.beats ?? '4', 'beats', 1, 12, true);
  const capo = numberOption(options.capo ?? '0', 'capo', 0, HIGHEST_CAPO, true);
  const tuning = choiceOption(options.tuning ?? 'standard', 'tuning', Object.keys(TUNINGS) as TuningId[]);
  const naming = choiceOption(options.naming ?? 'english', 'naming', NAMINGS);
  const slots = parseVamp(text, beats, naming);
  const crib = typedCrib(slots, { policy, qualities: QUALITIES, capo }, { tuning, capo });
  console.log(options.json ? JSON.stringify(cribJson(crib)) : printCrib(crib, sheetNames(naming)));
});
