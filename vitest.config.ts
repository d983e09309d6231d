import { pseudoLanguage } from './test/pseudo/pseudoLanguage.ts';
import { availableParallelism } from 'node:os';
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { chromiumToRun } from './bench/launchBrowser.ts';

const fixedSeed = 'test/fixedSeed.ts';

export default defineConfig({
  test: {
    reporters: ['default', ['json', { outputFile: 'build/test-report.json' }]],
    // Every core, on two as on eight.
    maxWorkers: Math.min(8, availableParallelism()),
    projects: [
      {
        test: {
          name: 'unit',
          environment: 'node',
          include: ['src/**/*.test.ts', 'bench/**/*.test.ts', 'test/**/*.test.ts'],
          exclude: [
            ...[
              'test/browser/**',
              'test/e2e/**',
              'test/dangers/**',
              'test/pseudo/**',
              'src/web/**',
            ],
          ],
          setupFiles: [fixedSeed],
          // One process for many files: loading the model anew for each takes as long as the tests. Lint keeps module mocks out.
          isolate: false,
          testTimeout: 60_000,
          // A database server is made and started in some.
          hookTimeout: 60_000,
        },
      },
      {
        // In a made-up language: what is said past the doors of the words is seen to be in another.
        plugins: [pseudoLanguage()],
        test: {
          name: 'pseudo',
          environment: 'node',
          include: ['test/pseudo/**/*.test.ts'],
          setupFiles: [fixedSeed, 'test/dangers/sumsHere.ts'],
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'dangers',
          environment: 'node',
          include: ['test/dangers/**/*.test.ts'],
          setupFiles: [fixedSeed, 'test/dangers/sumsHere.ts'],
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'web',
          environment: 'jsdom',
          include: ['src/web/**/*.test.{ts,tsx}'],
          setupFiles: [fixedSeed],
          testTimeout: 60_000,
        },
      },
      {
        // Inside a real browser, where its own database is. SQLite finds its engine beside itself: it is not to be bundled.
        optimizeDeps: {
          exclude: ['@sqlite.org/sqlite-wasm'],
          // Named, so that none is found halfway, which loads the page anew.
          include: ['fast-check', 'idb', 'kysely', 'zod'],
        },
        test: {
          name: 'browser',
          include: ['test/browser/**/*.test.ts'],
          setupFiles: ['test/browser/fixedSeed.ts'],
          testTimeout: 120_000,
          hookTimeout: 60_000,
          fileParallelism: false,
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright({ launchOptions: await chromiumToRun() }),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
      {
        test: {
          name: 'e2e',
          environment: 'node',
          include: ['test/e2e/**/*.test.ts'],
          globalSetup: 'test/e2e/unpackBrowser.ts',
          // A browser, its server and its sums fill two cores: two files at once only make each other late.
          fileParallelism: false,
          testTimeout: 300_000,
          hookTimeout: 120_000,
          // What is waited for comes sooner or later, on a busy computer later.
          expect: { poll: { timeout: 15_000 } },
        },
      },
    ],
  },
});
