import { readFile } from 'node:fs/promises';
import type { Server } from 'node:http';
import { join } from 'node:path';
import { createServer } from 'vite';
import { readSettings } from './settings.ts';
import { start } from './start.ts';
import type { PageName } from './web/pages.ts';

/** The server with pages that follow their sources: one process, one port. */
const root = join(import.meta.dirname, '..');

async function serve(http: Server) {
  const vite = await createServer({
    configFile: join(root, 'client', 'vite.config.ts'),
    root: join(root, 'client'),
    appType: 'custom',
    server: { middlewareMode: true, ws: { server: http } },
  });
  return {
    files: vite.middlewares,
    pages: async (page: PageName, url: string) => {
      const html = await readFile(join(root, 'client', `${page}.html`), 'utf8');
      return vite.transformIndexHtml(url, html);
    },
  };
}

await start(readSettings(process.env, process.argv.slice(2)), { built: null, serve });
