import { spawnSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';

const vamps = (...args: readonly string[]) => {
  const run = spawnSync(process.execPath, ['--import', 'tsx', 'server/vamps/command.ts', ...args], {
    encoding: 'utf8',
  });
  return { status: run.status, out: run.stdout, error: run.stderr };
};

describe('npm run vamps', () => {
  test.each([1, 3, 6, 7, 8, 9, 10, 11, 12])('level %d as lines of JSON', (level) => {
    const { status, out, error } = vamps('--level', String(level), '--count', '12', '--seed', '3', '--json');
    expect([status, error]).toEqual([0, '']);
    const lines = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(lines).toHaveLength(12);
    for (const line of lines) {
      expect(Object.keys(line)).toEqual(
        expect.arrayContaining([
          'level',
          'seed',
          'chords',
          'home',
          'key',
          'numerals',
          'tempo',
          'meter',
          'groove',
          'truth',
        ]),
      );
      const { chords, home, key, numerals, readings, truth } = line as {
        chords: string[];
        home: string;
        key: string | null;
        numerals: string[] | null;
        readings: { key: string; numerals: string[] }[];
        truth: { keys: { majors: string[] }; roots: string[] };
      };
      expect(line.level).toBe(level);
      expect(home).toBe(chords[0]);
      expect(truth.roots).toHaveLength(chords.length);
      expect(truth.keys.majors).toEqual(readings.map((reading) => reading.key));
      expect(key).toBe(readings.length === 1 ? readings[0]?.key : null);
      expect(numerals).toEqual(readings.length === 1 ? readings[0]?.numerals : null);
    }
    expect(lines[0]?.seed).toBe(3);
    expect(/[♭♯°]/.test(out)).toBe(false);
  });

  test('the same seed gives the same lines', () => {
    const args = ['--level', '7', '--count', '5', '--seed', '11', '--json'];
    expect(vamps(...args).out).toBe(vamps(...args).out);
    expect(vamps('--level', '7', '--count', '5', '--seed', '12', '--json').out).not.toBe(vamps(...args).out);
  });

  test('with chords counted there are one, two and three of them; at level 1 without being told to', () => {
    const counts = (...args: readonly string[]) =>
      new Set(
        vamps(...args, '--count', '40', '--json')
          .out.trimEnd()
          .split('\n')
          .map((line) => (JSON.parse(line) as { truth: { count: number } }).truth.count),
      );
    expect(counts('--level', '5')).toEqual(new Set([2]));
    expect(counts('--level', '5', '--counting')).toEqual(new Set([1, 2, 3]));
    expect(counts('--level', '1')).toEqual(new Set([1, 2, 3]));
  });

  test('the longer rounds: four orders and lengths, sevenths, basses off the root, loops of no key', () => {
    const lines = (level: string) =>
      vamps('--level', level, '--count', '60', '--json')
        .out.trimEnd()
        .split('\n')
        .map(
          (line) => JSON.parse(line) as { chords: string[]; beats: number[]; key: string | null; readings: unknown[] },
        );
    expect(new Set(lines('9').map(({ chords }) => new Set(chords).size))).toEqual(new Set([1, 2, 3, 4]));
    const sevenths = lines('10');
    expect(sevenths.some(({ chords }) => chords.includes('A7') || chords.includes('G7'))).toBe(true);
    expect(sevenths.some(({ chords, beats }) => chords.length === 3 && (beats[2] ?? 0) === 2 * (beats[0] ?? 0))).toBe(
      true,
    );
    expect(lines('11').every(({ chords }) => chords.some((chord) => chord.includes('/')))).toBe(true);
    expect(lines('12').some(({ key, readings }) => key === null && readings.length === 0)).toBe(true);
  });

  test('a table to read, with real signs', () => {
    const { status, out } = vamps('--level', '7', '--count', '40');
    expect(status).toBe(0);
    expect(out).toMatch(/^Level 7: .+\n {2}chords +bass +major keys +groove +tempo\n/);
    expect(out.trimEnd().split('\n')).toHaveLength(42);
    expect(out).toMatch(/[♭♯]/);
  });

  test('a beat level draws grooves that it can ask about, each with what it was', () => {
    const lines = vamps('--level', '3', '--beat', '4', '--count', '20', '--json').out.trimEnd().split('\n');
    type Line = { truth: { rhythm: { roles: unknown; opened: unknown } } };
    const rhythms = lines.map((line) => (JSON.parse(line) as Line).truth.rhythm);
    expect(rhythms).toHaveLength(20);
    expect(rhythms.every(({ roles, opened }) => roles !== null || opened !== null)).toBe(true);
  });

  test.each([
    [['--level', '7', '--beat', '9'], /--beat is a whole number from 1 to 8, not “9”/],
    [['--level', '13'], /--level is a whole number from 1 to 12, not “13”/],
    [['--level', '7', '--count', '0'], /--count/],
    [['--level', '7', '--seed', '-1'], /--seed/],
    [['--count', '3'], /Give a level/],
  ])('%j is refused with a sentence', (args, sentence) => {
    const { status, out, error } = vamps(...args);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(error.trimEnd().split('\n')).toHaveLength(1);
    expect(error).toMatch(sentence);
  });
});
