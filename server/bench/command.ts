import { readArguments, runCommand, UsageError } from '../command-line.ts';
import { consoleWords } from '../protocol/words/en.ts';
import { fill } from '../protocol/words/fill.ts';
import type { BenchRow } from './row.ts';
import { BENCHES } from './rows.ts';

const words = consoleWords.bench;

await runCommand(async (args) => {
  const { options, positionals } = readArguments(args, { json: 'flag' });
  if (positionals.length > 0) throw new UsageError(words.usage);
  const rows: BenchRow[] = [];
  for (const bench of BENCHES) {
    const row = await bench();
    rows.push(row);
    if (!options.json) console.log(line(row));
  }
  if (options.json) console.log(JSON.stringify({ rows }));
  // Absolute figures depend on the machine; only ratios taken in the same run can fail it.
  if (rows.some((row) => row.ratio !== null && !row.within)) process.exitCode = 1;
});

function line({ name, value, unit, ratio, against, budget, within, spread }: BenchRow): string {
  const figure = {
    name: name.padEnd(30),
    value: short(value),
    unit,
    budget,
    low: short(spread[0]),
    high: short(spread[1]),
  };
  const text =
    ratio === null
      ? fill(words.value, figure)
      : fill(words.ratio, { ...figure, ratio: short(ratio), against: against ?? '' });
  return within ? text : `${text}  ${words.over}`;
}

function short(value: number): string {
  return String(Number(value.toPrecision(4)));
}
