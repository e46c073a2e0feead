import { readFileSync } from 'node:fs';
import { dirname, relative, resolve } from 'node:path';
import { expect, test } from 'vitest';

const THEORY = resolve(import.meta.dirname, '../../../shared-theory');

/** Every module that a file loads when it runs, over all its imports; types alone load nothing. Packages by their name. */
function loadedBy(entry: string): Set<string> {
  const seen = new Set<string>();
  const visit = (path: string): void => {
    const name = relative(THEORY, path);
    if (seen.has(name)) return;
    seen.add(name);
    const source = readFileSync(path, 'utf8');
    const loads = source.matchAll(
      /(?:^|\n)(?:import|export)\s+(?!type\b)(?:[^'";]*?\sfrom\s+)?'([^']+)'|\bimport\(\s*'([^']+)'/g,
    );
    for (const [, named, dynamic] of loads) {
      const target = named ?? dynamic ?? '';
      if (target.startsWith('.')) visit(resolve(dirname(path), target));
      else seen.add(target);
    }
  };
  visit(resolve(THEORY, entry));
  return seen;
}

/** What the pads of taps and grids read answers by: plain numbers, no truth. */
const PADS = ['taps/taps.ts', 'groove-grid.ts', 'meters.ts'];

test.each(['questions/asks.ts', 'questions/round-questions.ts', 'questions/question.ts'])(
  'what a phone loads with %s holds no judge, no keys and no package',
  (entry) => {
    const loaded = [...loadedBy(entry)];
    expect(loaded.filter((path) => /judge/.test(path))).toEqual([]);
    expect(loaded.filter((path) => !path.startsWith('questions/') && !PADS.includes(path))).toEqual([]);
  },
);

test('the walk finds what is there', () => {
  expect([...loadedBy('questions/asks.ts')]).toContain('questions/keys/ask.ts');
  const judging = [...loadedBy('questions/judges.ts')];
  expect(judging).toContain('questions/keys/judge.ts');
  expect(judging).toContain('keys.ts');
  expect(judging).toContain('pitch.ts');
});
