import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { choiceOption, numberOption, readArguments, runCommand, UsageError } from '../../server/command-line.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';

const KINDS = { tempo: 'value', json: 'flag' } as const;

describe('reading arguments', () => {
  test.each([
    [[], { tempo: undefined, json: false }, []],
    [['Em D'], { tempo: undefined, json: false }, ['Em D']],
    [['Em D', '--tempo', '100', '--json'], { tempo: '100', json: true }, ['Em D']],
    [['--json', '--tempo=100', 'Em D'], { tempo: '100', json: true }, ['Em D']],
    [['--tempo', '-3'], { tempo: '-3', json: false }, []],
    [['--tempo=--json'], { tempo: '--json', json: false }, []],
    [['--', '--json'], { tempo: undefined, json: false }, ['--json']],
  ])('%j', (args, options, positionals) => {
    expect(readArguments(args, KINDS)).toEqual({ options, positionals });
  });

  test.each([
    [['--tmpo', '100'], 'There is no option --tmpo. Options here: --tempo, --json.'],
    [['-j'], 'There is no option -j. Options here: --tempo, --json.'],
    [['--constructor'], 'There is no option --constructor. Options here: --tempo, --json.'],
    [['--tempo'], 'The option --tempo needs a value after it.'],
    [['--tempo='], 'The option --tempo needs a value after it.'],
    [['--tempo', '--json'], 'The option --tempo needs a value after it.'],
    [['--json=yes'], 'The option --json takes no value.'],
    [['--json', '--json'], 'The option --json is given twice. Give it once.'],
  ])('%j is refused', (args, sentence) => {
    expect(() => readArguments(args, KINDS)).toThrow(new UsageError(sentence));
  });
});

describe('values', () => {
  test('numbers within a range', () => {
    expect(numberOption('0.5', 'swing', 0, 1)).toBe(0.5);
    expect(numberOption('-3', 'seed', -5, 5, true)).toBe(-3);
    for (const text of ['', ' ', 'x', 'NaN', '1.1', '-1']) {
      expect(() => numberOption(text, 'swing', 0, 1)).toThrow(
        new UsageError(`The option --swing is a number from 0 to 1, not “${text}”.`),
      );
    }
    expect(() => numberOption('2.5', 'loops', 1, 8, true)).toThrow(
      new UsageError('The option --loops is a whole number from 1 to 8, not “2.5”.'),
    );
  });

  test('one of several words', () => {
    expect(choiceOption('majors', 'policy', ['majors', 'relatives'])).toBe('majors');
    expect(() => choiceOption('modes', 'policy', ['majors', 'relatives'])).toThrow(
      new UsageError('The option --policy is one of majors, relatives, not “modes”.'),
    );
  });
});

describe('running a command', () => {
  const written: string[] = [];
  beforeEach(() => {
    vi.spyOn(process.stderr, 'write').mockImplementation((text) => written.push(String(text)) > 0);
  });
  afterEach(() => {
    vi.restoreAllMocks();
    written.length = 0;
    process.exitCode = undefined;
    process.stdout.removeAllListeners('error');
  });

  test('a good one writes nothing on standard error', async () => {
    await runCommand(() => {});
    expect(written).toEqual([]);
    expect(process.exitCode).toBeUndefined();
  });

  test.each([
    [
      'used wrongly',
      () => {
        throw new UsageError('Say it so.');
      },
      'Say it so.\n',
    ],
    [
      'chords that cannot be read',
      () => void parseVamp('Em H', 4),
      'Could not read the chords at “H”: H is called B here, and B flat is Bb. Write B.\n',
    ],
    ['no chords', () => void parseVamp('', 4), 'There are no chords: write chords such as Em D.\n'],
    [
      'later',
      async () => {
        await Promise.resolve();
        throw new UsageError('Too late.');
      },
      'Too late.\n',
    ],
  ])('%s: one sentence and status 2', async (_, run, sentence) => {
    await runCommand(run);
    expect(written).toEqual([sentence]);
    expect(process.exitCode).toBe(2);
  });

  test('a reader of the output that leaves early is no fault, any other failure of the output is', async () => {
    await runCommand(() => {});
    const failing = (code: string) => () => process.stdout.emit('error', Object.assign(new Error(code), { code }));
    expect(failing('EPIPE')).not.toThrow();
    expect(failing('EIO')).toThrow('EIO');
  });

  test('a fault of ours keeps its trace', async () => {
    const fault = new TypeError('ours');
    await expect(
      runCommand(() => {
        throw fault;
      }),
    ).rejects.toBe(fault);
    expect(written).toEqual([]);
  });
});
