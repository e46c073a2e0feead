import { BEAT_LEVELS } from '../../shared-theory/beat-levels.ts';
import { generate, type GeneratedVamp, type GenerateRequest } from '../../shared-theory/generate.ts';
import { levelOf, LEVELS_THAT_STAND } from '../../shared-theory/levels.ts';
import { seededRandom } from '../../shared-theory/random.ts';
import { numberOption, readArguments, runCommand, UsageError } from '../command-line.ts';
import { consoleWords } from '../protocol/words/en.ts';
import { printVamps, vampLine } from './print.ts';

const MOST_VAMPS = 1_000_000;
/** Lines written at once. */
const BATCH = 500;

await runCommand((args) => {
  const { options, positionals } = readArguments(args, {
    level: 'value',
    count: 'value',
    seed: 'value',
    beat: 'value',
    counting: 'flag',
    json: 'flag',
  });
  if (options.level === undefined || positionals.length > 0) throw new UsageError(consoleWords.vamps.usage);
  const level = numberOption(
    options.level,
    'level',
    Math.min(...LEVELS_THAT_STAND),
    Math.max(...LEVELS_THAT_STAND),
    true,
  );
  const count = numberOption(options.count ?? '8', 'count', 1, MOST_VAMPS, true);
  const seed = numberOption(options.seed ?? '1', 'seed', 0, Number.MAX_SAFE_INTEGER, true);
  // Where the level asks how many chords there are it counts by itself.
  const counting = options.counting || levelOf(level).questions.includes('count');
  const beat =
    options.beat === undefined ? {} : { beat: numberOption(options.beat, 'beat', 1, BEAT_LEVELS.length, true) };
  const vamps = vampsOf({ level, counting, ...beat }, count, seed);
  if (!options.json) {
    console.log(printVamps(levelOf(level), [...vamps]));
    return;
  }
  let batch: string[] = [];
  for (const vamp of vamps) {
    batch.push(vampLine(vamp));
    if (batch.length < BATCH) continue;
    console.log(batch.join('\n'));
    batch = [];
  }
  if (batch.length > 0) console.log(batch.join('\n'));
});

/** Vamps one after another, each knowing those before it; the first has the seed itself, the others seeds drawn from it. */
function* vampsOf(
  asked: Pick<GenerateRequest, 'level' | 'counting' | 'beat'>,
  count: number,
  seed: number,
): Generator<GeneratedVamp> {
  const random = seededRandom(seed, 'seeds');
  let recent: readonly GeneratedVamp[] = [];
  for (let index = 0; index < count; index += 1) {
    const own = index === 0 ? seed : Math.floor(random() * 2 ** 32);
    const made = generate({ ...asked, seed: own, recent: recent.map(({ vamp }) => vamp) });
    recent = [...recent, made].slice(-8);
    yield made;
  }
}
