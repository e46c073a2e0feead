// @vitest-environment node
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { createBuilder, type Rollup } from 'vite';
import { beforeAll, expect, test, vi } from 'vitest';

/** What a desk loads before its first round can begin, gzip, fonts apart. */
const BUDGET = 80_000;

let files: readonly (Rollup.OutputChunk | Rollup.OutputAsset)[] = [];

beforeAll(async () => {
  // As `npm start` builds it: under a test's own setting libraries bring their debugging parts.
  vi.stubEnv('NODE_ENV', 'production');
  const builder = await createBuilder({
    configFile: join(import.meta.dirname, '../../../client/vite.config.ts'),
    logLevel: 'error',
    environments: { client: { build: { write: false } } },
  });
  const client = builder.environments['client'];
  if (!client) throw new Error('The build has no environment for the desk.');
  const built = await builder.build(client);
  vi.unstubAllEnvs();
  files = [built].flat().flatMap((output) => ('output' in output ? output.output : []));
});

const textOf = (file: Rollup.OutputChunk | Rollup.OutputAsset): Buffer =>
  Buffer.from(file.type === 'chunk' ? file.code : file.source);

/** Files that the desk's page names. */
function first(): readonly (Rollup.OutputChunk | Rollup.OutputAsset)[] {
  const page = files.find(({ fileName }) => fileName.endsWith('desk.html'));
  if (!page) throw new Error('The build has no page for the desk.');
  const html = textOf(page).toString();
  return [page, ...files.filter(({ fileName }) => html.includes(`"/${fileName}"`))];
}

test('the desk stays under its budget until another leaf than the round is turned to', () => {
  const total = first().reduce((sum, file) => sum + gzipSync(textOf(file), { level: 9 }).length, 0);
  expect(total).toBeGreaterThan(40_000);
  expect(total).toBeLessThanOrEqual(BUDGET);
});

test('all that a round needs is named by the page, the other leaves are not', () => {
  const ids = first().flatMap((file) => (file.type === 'chunk' ? file.moduleIds : []));
  const holds = (source: string) => ids.some((id) => id.endsWith(source));
  for (const source of [
    'round-leaf.tsx',
    'start-form.tsx',
    'sound-controls.tsx',
    'fallen-answers.tsx',
    'crib-leaf.tsx',
  ])
    expect(holds(`desk/screens/${source}`)).toBe(true);
  for (const source of ['groove-leaf.tsx', 'groove-editor.tsx', 'room-leaf.tsx', 'roll-leaf.tsx', 'lesson-leaf.tsx'])
    expect(holds(`desk/screens/${source}`)).toBe(false);
  expect(ids.some((id) => /shared-theory\/groove|\/tone\//.test(id))).toBe(false);
});
