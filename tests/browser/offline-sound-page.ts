import { join } from 'node:path';
import { build, type Rollup } from 'vite';
import { vi } from 'vitest';
import { launchChromium } from '../support/chromium.ts';
import type { Playing, Told } from './offline-page.ts';

/** What left the page; `pressed`, and when something was told, in seconds from the first sample. */
export type Leaving = {
  readonly samples: Float32Array;
  readonly sampleRate: number;
  readonly pressed: number;
  readonly told: readonly Told[];
};

export type OfflineSoundPage = {
  /** Plays in the page on a clock that waits for it: every machine gives the same. */
  readonly leaves: (playing: Playing) => Promise<Leaving>;
  readonly end: () => Promise<void>;
};

/** A real browser with the host page's own sound in it, and nothing beside. */
export async function openOfflineSound(): Promise<OfflineSoundPage> {
  // As it is built for the class: under a test's own setting libraries bring their debugging parts.
  vi.stubEnv('NODE_ENV', 'production');
  const built = await build({
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      minify: false,
      lib: { entry: join(import.meta.dirname, 'offline-page.ts'), formats: ['iife'], name: 'offline' },
    },
  });
  vi.unstubAllEnvs();
  const outputs = [built].flat().flatMap((each) => ('output' in each ? each.output : []));
  const program = outputs.find((output): output is Rollup.OutputChunk => output.type === 'chunk');
  if (!program) throw new Error('The page has no program.');

  const browser = await launchChromium();
  const page = await browser.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  await page.addScriptTag({ content: program.code });
  return {
    leaves: async (playing) => {
      const { coded, pressed, told } = await page.evaluate((given) => {
        if (!window.leaves) throw new Error('The program has not run.');
        return window.leaves(given);
      }, playing);
      if (faults.length > 0) throw new Error(faults.splice(0).join('\n'));
      const samples = new Float32Array(Uint8Array.from(Buffer.from(coded, 'base64')).buffer);
      return { samples, sampleRate: playing.sampleRate, pressed, told };
    },
    end: () => browser.close(),
  };
}
