import { spawnSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';

/** Runs the command as `npm run crib` does. */
function crib(...args: readonly string[]) {
  const run = spawnSync(process.execPath, ['--import', 'tsx', 'server/crib/command.ts', ...args], { encoding: 'utf8' });
  return { status: run.status, out: run.stdout, error: run.stderr };
}
const json = (...args: readonly string[]) => {
  const { status, out, error } = crib(...args, '--json');
  expect({ status, error, lines: out.split('\n').length }).toEqual({ status: 0, error: '', lines: 2 });
  return JSON.parse(out) as unknown;
};

describe('crib --json', () => {
  test('Em D: G (vi–V) and D (ii–I), deciders C and C sharp', () => {
    expect(json('Em D')).toMatchObject({
      chords: ['Em', 'D'],
      policy: 'majors',
      keys: [
        { key: 'G major', numerals: ['vi', 'V'] },
        { key: 'D major', numerals: ['ii', 'I'] },
      ],
      deciders: [
        { note: 'C', leaves: ['G major'] },
        { note: 'C#', leaves: ['D major'] },
      ],
    });
  });

  test('C D: only G; C Am: three keys; Am E: none', () => {
    expect(json('C D')).toMatchObject({
      keys: [{ key: 'G major', numerals: ['IV', 'V'] }],
      deciders: [],
      settlers: [],
    });
    expect(json('C Am')).toMatchObject({ keys: [{ key: 'F major' }, { key: 'C major' }, { key: 'G major' }] });
    expect(json('Am E')).toMatchObject({ keys: [], deciders: [], settlers: [], clash: ['C', 'G#'] });
  });

  test('with relatives, with bars of three beats', () => {
    expect(json('C D', '--policy', 'relatives')).toMatchObject({ keys: [{ key: 'G major' }, { key: 'E minor' }] });
    expect(json('| G . D |', '--beats', '3')).toMatchObject({ chords: ['G', 'D'] });
  });
});

describe('crib', () => {
  test('a sheet with real signs', () => {
    const { status, out, error } = crib('Em D');
    expect({ status, error }).toEqual({ status: 0, error: '' });
    expect(out).toContain('[Em]');
    expect(out).toContain('C♯  D major');
    expect(out).not.toContain('#');
  });

  test.each([
    [[], 'Give the chords of one vamp in quotes: npm run crib -- "Em D"\n'],
    [['Em', 'D'], 'Give the chords of one vamp in quotes: npm run crib -- "Em D"\n'],
    [['Em H'], 'Could not read the chords at “H”: H is called B here, and B flat is Bb. Write B.\n'],
    [['Em D', '--policy', 'dorian', '--json'], 'The option --policy is one of majors, relatives, not “dorian”.\n'],
  ])('%j: a sentence on standard error, status 2', (args, error) => {
    expect(crib(...args)).toEqual({ status: 2, out: '', error });
  });
});
