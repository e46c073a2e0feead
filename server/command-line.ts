import { parseArgs } from 'node:util';
import { ReadingError } from '../shared-theory/reading-error.ts';
import { consoleWords } from './protocol/words/en.ts';
import { fill } from './protocol/words/fill.ts';

const words = consoleWords.commandLine;

/** A command called wrongly: what was wrong and what would be right, in one sentence. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

/** Options of a command by name: `value` for `--tempo 100`, `flag` for `--json`. */
type OptionKinds = Readonly<Record<string, 'value' | 'flag'>>;

/** What was given: flags true or false, values as text or undefined. */
export type Arguments<Kinds extends OptionKinds> = {
  readonly options: { readonly [Name in keyof Kinds]: Kinds[Name] extends 'flag' ? boolean : string | undefined };
  readonly positionals: readonly string[];
};

/** Reads `--name value`, `--name=value`, flags and positionals. UsageError for what the command does not know. */
export function readArguments<const Kinds extends OptionKinds>(
  args: readonly string[],
  kinds: Kinds,
): Arguments<Kinds> {
  const { tokens, positionals } = parseArgs({
    args: [...args],
    options: Object.fromEntries(
      Object.entries(kinds).map(([name, kind]) => [name, { type: kind === 'flag' ? 'boolean' : 'string' } as const]),
    ),
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const given = new Map<string, string | true>();
  for (const token of tokens) {
    if (token.kind !== 'option') continue;
    const { name, rawName, value } = token;
    if (!Object.hasOwn(kinds, name) || !rawName.startsWith('--')) {
      const known = Object.keys(kinds).map((option) => `--${option}`);
      throw new UsageError(fill(words.unknownOption, { found: rawName, known: known.join(', ') }));
    }
    if (given.has(name)) throw new UsageError(fill(words.twice, { name }));
    if (kinds[name] === 'flag' && value !== undefined) throw new UsageError(fill(words.takesNoValue, { name }));
    // A value that looks like an option is a forgotten value, save a negative number.
    const forgotten = value === undefined || value === '' || (!token.inlineValue && /^--?[^\d.]/.test(value));
    if (kinds[name] === 'value' && forgotten) throw new UsageError(fill(words.needsValue, { name }));
    given.set(name, value ?? true);
  }
  const options = Object.fromEntries(
    Object.entries(kinds).map(([name, kind]) => [name, kind === 'flag' ? given.has(name) : given.get(name)]),
  );
  return { options: options as Arguments<Kinds>['options'], positionals };
}

/** Reads an option's number within a range, both ends included. UsageError where it is none or outside. */
export function numberOption(text: string, name: string, low: number, high: number, whole = false): number {
  const value = text.trim() === '' ? Number.NaN : Number(text);
  if (value >= low && value <= high && (!whole || Number.isInteger(value))) return value;
  throw new UsageError(fill(whole ? words.notWhole : words.notNumber, { name, low, high, found: text }));
}

/** Reads an option that is one of several words. UsageError where it is none of them. */
export function choiceOption<Choice extends string>(text: string, name: string, choices: readonly Choice[]): Choice {
  const found = choices.find((choice) => choice === text);
  if (found !== undefined) return found;
  throw new UsageError(fill(words.notAChoice, { name, choices: choices.join(', '), found: text }));
}

/**
 * Runs a command with the arguments of the process. A command called wrongly, or chords that cannot be read, give one sentence on
 * standard error and exit status 2; anything else is a fault of ours and ends with its trace and status 1.
 */
export async function runCommand(run: (args: readonly string[]) => void | Promise<void>): Promise<void> {
  // A reader that has seen enough (`… | head`) is no fault.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
  try {
    await run(process.argv.slice(2));
  } catch (error) {
    const sentence = sentenceOf(error);
    if (sentence === null) throw error;
    process.stderr.write(`${sentence}\n`);
    process.exitCode = 2;
  }
}

function sentenceOf(error: unknown): string | null {
  if (error instanceof UsageError) return error.message;
  if (!(error instanceof ReadingError)) return null;
  const { found, suggestion } = error;
  return found === '' ? fill(words.noChords, { suggestion }) : fill(words.chordsNotReadable, { found, suggestion });
}
