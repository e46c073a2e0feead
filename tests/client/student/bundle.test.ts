// @vitest-environment node
import type { Rollup } from 'vite';
import { beforeAll, expect, test } from 'vitest';
import { GRID_KINDS, KINDS, TAPPED_KINDS, type Kind } from '../../../shared-theory/questions/question.ts';
import { buildPages, bytesOf, zipped, type BuiltFile } from '../../support/built-pages.ts';

/** What a phone loads before it can answer, gzip, fonts apart. */
const BUDGET = 36_000;
const FONT_BUDGET = 16_000;

let files: readonly BuiltFile[] = [];

beforeAll(async () => {
  files = await buildPages('student');
});

const chunks = (): Rollup.OutputChunk[] => files.filter((file) => file.type === 'chunk');

/** A chunk and all that it needs at once. */
function closure(name: string, seen = new Set<string>()): Set<string> {
  if (seen.has(name)) return seen;
  seen.add(name);
  for (const needed of chunks().find(({ fileName }) => fileName === name)?.imports ?? []) closure(needed, seen);
  return seen;
}

const chunkOf = (source: string): string => {
  const found = chunks().find(({ moduleIds }) => moduleIds.some((id) => id.endsWith(source)));
  if (!found) throw new Error(`No chunk holds ${source}.`);
  return found.fileName;
};

/** Questions that are answered on another's pad, or on one with a name of its own. */
const PADS: Readonly<Partial<Record<Kind, string>>> = {
  settler: 'keys',
  root: 'neck',
  bass: 'neck',
  ...Object.fromEntries([...TAPPED_KINDS].map((kind) => [kind, 'tap'])),
  ...Object.fromEntries([...GRID_KINDS].map((kind) => [kind, 'grid'])),
  threes: 'feel',
  'half-time': 'feel',
  swing: 'feel',
  drive: 'feel',
  pendulum: 'feel',
  'change-place': 'feel',
};

test.each([...KINDS].filter((kind) => kind !== 'settler'))('page and %s pad stay under the budget', (kind) => {
  const needed = closure(chunkOf('student/main.tsx'), closure(chunkOf(`pads/${PADS[kind] ?? kind}-pad.tsx`)));
  const first = files.filter(({ fileName }) => needed.has(fileName) || /\.(html|css)$/.test(fileName));
  const total = first.reduce((sum, file) => sum + zipped(file), 0);
  expect(first.some(({ fileName }) => fileName.endsWith('.css'))).toBe(true);
  expect(first.some(({ fileName }) => fileName.endsWith('.html'))).toBe(true);
  expect(total).toBeGreaterThan(20_000);
  expect(total).toBeLessThanOrEqual(BUDGET);
});

test('a settler is answered on the pad of the keys', () => {
  expect(chunks().filter(({ fileName }) => fileName.includes('settler'))).toEqual([]);
});

test('a pad of taps or of the grid analyses nothing: only the marks on the server do', () => {
  const needed = [...closure(chunkOf('pads/tap-pad.tsx'), closure(chunkOf('pads/grid-pad.tsx')))];
  const ids = chunks().flatMap(({ fileName, moduleIds }) => (needed.includes(fileName) ? moduleIds : []));
  expect(ids.some((id) => id.endsWith('/pads/tap-series.ts'))).toBe(true);
  expect(ids.filter((id) => /shared-theory\/taps\/(?!taps\.ts)/.test(id))).toEqual([]);
});

test('everything a phone needs at first comes in one script', () => {
  expect([...closure(chunkOf('student/main.tsx'))]).toHaveLength(1);
});

test('one face and the signs, no more', () => {
  const fonts = files.filter(({ fileName }) => /\.(woff2?|ttf)$/.test(fileName));
  expect(fonts.map(({ fileName }) => fileName.replace(/-[\w-]{8}\./, '.')).toSorted()).toEqual([
    'assets/besley-600.woff2',
    'assets/hearsay-signs.ttf',
  ]);
  expect(fonts.reduce((sum, file) => sum + bytesOf(file).length, 0)).toBeLessThanOrEqual(FONT_BUDGET);
});

test.each([
  /\/tone\//,
  /\/tonal\//,
  /@tonaljs/,
  /\/valibot\//,
  /judge/,
  /@preact\/signals/,
  /server\/rooms/,
  /desk|host/,
])('no phone carries a module of %s', (forbidden) => {
  const ids = chunks().flatMap(({ moduleIds }) =>
    moduleIds.map((id) => id.replace(/^.*\/(?=node_modules|client|server|shared-theory)/, '')),
  );
  expect(ids.length).toBeGreaterThan(40);
  expect(ids.filter((id) => forbidden.test(id))).toEqual([]);
});

// Safari 14 and Chrome 87 lack them (MDN browser compatibility data); those in a secure context only are undefined on plain http.
test.each([
  'toSorted(',
  'toReversed(',
  'structuredClone(',
  'Object.hasOwn',
  'Object.groupBy',
  'findLast(',
  '.at(',
  'randomUUID',
  'crypto.subtle',
  'serviceWorker',
])('nothing calls %s', (call) => {
  expect(
    chunks()
      .filter(({ code }) => code.includes(call))
      .map(({ fileName }) => fileName),
  ).toEqual([]);
});
