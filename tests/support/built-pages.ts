import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { createBuilder, type Rollup } from 'vite';
import { vi } from 'vitest';

export type BuiltFile = Rollup.OutputChunk | Rollup.OutputAsset;

/** All files of one build of the pages, `client` of the teacher's or `student` of the phones', as `npm start` makes them; nothing is written. */
export async function buildPages(environment: 'client' | 'student'): Promise<readonly BuiltFile[]> {
  // Under a test's own setting libraries bring their debugging parts.
  vi.stubEnv('NODE_ENV', 'production');
  const builder = await createBuilder({
    configFile: join(import.meta.dirname, '../../client/vite.config.ts'),
    logLevel: 'error',
    environments: { [environment]: { build: { write: false } } },
  });
  const pages = builder.environments[environment];
  if (!pages) throw new Error(`The build has no environment ${environment}.`);
  const built = await builder.build(pages);
  vi.unstubAllEnvs();
  return [built].flat().flatMap((output) => ('output' in output ? output.output : []));
}

export const bytesOf = (file: BuiltFile): Buffer => Buffer.from(file.type === 'chunk' ? file.code : file.source);

/** Bytes that it is on its way. */
export const zipped = (file: BuiltFile): number => gzipSync(bytesOf(file), { level: 9 }).length;
