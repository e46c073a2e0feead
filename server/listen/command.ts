import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { numberOption, readArguments, runCommand, UsageError } from '../command-line.ts';
import { listenWords as words } from '../protocol/words/listen-words.ts';
import { earIn, type Ear } from './ear.ts';
import { hearStrums, RATE, sheetOf, type Heard } from './listening.ts';
import { passes, printTable } from './print.ts';
import { strums, type Strum } from './strums.ts';
import { writeWav } from '../../shared-theory/sound/wav.ts';

const COUNT = 100;
const MOST = 1000;

/** A transcriber loads its network for each file, and a long file takes much memory. */
const STRUMS_PER_FILE = 10;

await runCommand(async (args) => {
  const { options, positionals } = readArguments(args, {
    ear: 'value',
    count: 'value',
    seed: 'value',
    keep: 'value',
    json: 'flag',
  });
  if (positionals.length > 0) throw new UsageError(words.usage);
  const count = options.count === undefined ? COUNT : numberOption(options.count, 'count', 1, MOST, true);
  const seed = options.seed === undefined ? 1 : numberOption(options.seed, 'seed', 0, Number.MAX_SAFE_INTEGER, true);
  const ear = earIn(options.ear ?? process.env.LISTENER_HOME);
  const heard = await listen(strums(count, seed), ear, options.keep);
  if (options.json) console.log(JSON.stringify(heard.map(({ strum, ...rest }) => ({ ...plain(strum), ...rest }))));
  else for (const line of printTable(heard)) console.log(line);
  if (!passes(heard)) process.exitCode = 1;
});

/** Lets the ear hear all strums, some in each file; the files stay in `keep` where that is named. */
async function listen(all: readonly Strum[], ear: Ear, keep: string | undefined): Promise<readonly Heard[]> {
  const folder = keep ?? mkdtempSync(join(tmpdir(), 'listen-'));
  mkdirSync(folder, { recursive: true });
  const heard: Heard[] = [];
  try {
    for (let from = 0; from < all.length; from += STRUMS_PER_FILE) {
      const some = all.slice(from, from + STRUMS_PER_FILE);
      const file = join(folder, `${from + 1}.wav`);
      const sheet = sheetOf(some);
      writeFileSync(file, writeWav(sheet.samples, RATE));
      heard.push(...hearStrums(sheet, await ear(file)));
    }
  } finally {
    if (keep === undefined) rmSync(folder, { recursive: true });
  }
  return heard;
}

function plain({ symbol, quality, bass, frets, voice, groove, tempo }: Strum) {
  return { symbol, quality, bass, frets, voice, groove: groove.id, tempo };
}
