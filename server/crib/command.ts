import { cribOf, parseVamp, POLICIES } from '../../shared-theory/index.ts';
import { choiceOption, readArguments, runCommand, UsageError } from '../command-line.ts';
import { consoleWords } from '../protocol/words/en.ts';
import { printCrib } from './print.ts';

/** Bars are read in 4/4; a crib does not depend on how long a chord lasts. */
const BEATS = 4;

await runCommand((args) => {
  const { options, positionals } = readArguments(args, { policy: 'value', json: 'flag' });
  const [text, ...more] = positionals;
  if (text === undefined || more.length > 0) throw new UsageError(consoleWords.crib.usage);
  const policy = choiceOption(options.policy ?? 'majors', 'policy', POLICIES);
  const chords = parseVamp(text, BEATS).map(({ chord }) => chord);
  console.log(options.json ? JSON.stringify(cribOf(chords, policy)) : printCrib(chords, policy));
});
