import { defineConfig } from 'vitest/config';

/** Puts another module in the place of one that the other tests share. */
const ALONE = 'tests/theory/questions/reachable.test.ts';
const report = process.env.HEARSAY_TEST_REPORT;
const slow = { testTimeout: 240_000, hookTimeout: 240_000 };

export default defineConfig({
  test: {
    reporters: report ? ['default', ['json', { outputFile: report }]] : ['default'],
    projects: [
      // Pure functions: their tests share one loaded copy of them, which halves the time.
      {
        test: {
          name: 'theory',
          include: ['tests/theory/**/*.test.ts'],
          exclude: [ALONE],
          testTimeout: 60_000,
          isolate: false,
        },
      },
      { test: { name: 'theory-alone', include: [ALONE], testTimeout: 60_000 } },
      { test: { name: 'server', include: ['tests/server/**/*.test.ts'], testTimeout: 60_000, hookTimeout: 60_000 } },
      {
        test: {
          name: 'client',
          include: ['tests/client/**/*.test.{ts,tsx}'],
          environment: 'happy-dom',
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      { test: { name: 'browser', include: ['tests/browser/**/*.test.ts'], fileParallelism: false, ...slow } },
    ],
  },
});
