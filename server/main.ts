import { join } from 'node:path';
import { consoleWords } from './protocol/words/en.ts';
import { fill } from './protocol/words/fill.ts';
import { readSettings, StartError } from './settings.ts';
import { builtPages } from './web/pages.ts';

const words = consoleWords.server;

try {
  const settings = readSettings(process.env, process.argv.slice(2));
  // Whatever needs the database driver is loaded here, where its absence gets a sentence.
  const [{ buildClient }, { start }] = await Promise.all([import('./client-build.ts'), import('./start.ts')]);
  const built =
    settings.client ?? (await buildClient(join(import.meta.dirname, '..'), (sentence) => console.log(sentence)));
  await start(settings, { built, pages: builtPages(built) });
} catch (error) {
  console.error(sentenceFor(error));
  process.exit(1);
}

/** What a person can do about it, without the inside of the program. */
function sentenceFor(error: unknown): string {
  if (error instanceof StartError) return error.message;
  const why = error instanceof Error ? error.message : String(error);
  return /libsql/.test(why) && /cannot find/i.test(why) ? words.driverMissing : fill(words.failed, { why });
}
