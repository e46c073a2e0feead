// @vitest-environment node
import { beforeAll, expect, test } from 'vitest';
import { buildPages, bytesOf, zipped, type BuiltFile } from '../../support/built-pages.ts';

/** What a desk loads before its first round can begin, gzip, fonts apart. */
const BUDGET = 80_000;

let files: readonly BuiltFile[] = [];

beforeAll(async () => {
  files = await buildPages('client');
});

/** Files that the desk's page names. */
function first(): readonly BuiltFile[] {
  const page = files.find(({ fileName }) => fileName.endsWith('desk.html'));
  if (!page) throw new Error('The build has no page for the desk.');
  const html = bytesOf(page).toString();
  return [page, ...files.filter(({ fileName }) => html.includes(`"/${fileName}"`))];
}

test('the desk stays under its budget until another leaf than the round is turned to', () => {
  const total = first().reduce((sum, file) => sum + zipped(file), 0);
  expect(total).toBeGreaterThan(40_000);
  expect(total).toBeLessThanOrEqual(BUDGET);
});

test('all that a round begins with is named by the page; what answers bring and the other leaves are not', () => {
  const ids = first().flatMap((file) => (file.type === 'chunk' ? file.moduleIds : []));
  const holds = (source: string) => ids.some((id) => id.endsWith(source));
  for (const source of ['round-leaf.tsx', 'start-form.tsx', 'sound-controls.tsx', 'crib-leaf.tsx'])
    expect(holds(`desk/screens/${source}`)).toBe(true);
  for (const source of [
    'fallen-answers.tsx',
    'class-taps.tsx',
    'groove-leaf.tsx',
    'groove-editor.tsx',
    'room-leaf.tsx',
    'roll-leaf.tsx',
    'lesson-leaf.tsx',
  ])
    expect(holds(`desk/screens/${source}`)).toBe(false);
  // How a grid is counted tells drawn answers; the grooves on it stay away.
  expect(ids.some((id) => /shared-theory\/groove(?!-grid)|\/tone\//.test(id))).toBe(false);
});
