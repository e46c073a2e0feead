import { defineConfig } from 'vitest/config';

const report = process.env.HEARSAY_TEST_REPORT;
const slow = { testTimeout: 240_000, hookTimeout: 240_000 };

export default defineConfig({
  test: {
    reporters: report ? ['default', ['json', { outputFile: report }]] : ['default'],
    projects: [
      { test: { name: 'theory', include: ['tests/theory/**/*.test.ts'], testTimeout: 60_000 } },
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
