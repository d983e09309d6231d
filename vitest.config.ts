import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    reporters: ['default', ['json', { outputFile: 'build/test-report.json' }]],
    projects: [
      {
        test: {
          name: 'unit',
          environment: 'node',
          include: ['src/**/*.test.ts', 'bench/**/*.test.ts', 'test/**/*.test.ts'],
          exclude: ['test/e2e/**', 'src/web/**'],
          setupFiles: ['test/fixedSeed.ts'],
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'web',
          environment: 'jsdom',
          include: ['src/web/**/*.test.{ts,tsx}'],
          setupFiles: ['test/fixedSeed.ts'],
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'e2e',
          environment: 'node',
          include: ['test/e2e/**/*.test.ts'],
          fileParallelism: false,
          testTimeout: 300_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
