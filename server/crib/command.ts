import { cribOf } from '../../shared-theory/crib.ts';
import { POLICIES } from '../../shared-theory/truth.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';
import { choiceOption, numberOption, readArguments, runCommand, UsageError } from '../command-line.ts';
import { consoleWords } from '../protocol/words/en.ts';
import { printCrib } from './print.ts';

await runCommand((args) => {
  const { options, positionals } = readArguments(args, { policy: 'value', beats: 'value', json: 'flag' });
  const [text, ...more] = positionals;
  if (text === undefined || more.length > 0) throw new UsageError(consoleWords.crib.usage);
  const policy = choiceOption(options.policy ?? 'majors', 'policy', POLICIES);
  const beats = numberOption(options.beats ?? '4', 'beats', 1, 12, true);
  const chords = parseVamp(text, beats).map(({ chord }) => chord);
  console.log(options.json ? JSON.stringify(cribOf(chords, policy)) : printCrib(chords, policy));
});
