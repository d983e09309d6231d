import { defineConfig } from 'vitest/config';

/** The tests beside the source of one room, for the night's mutants: what needs a build or a browser is elsewhere. */
const room = process.env['THROUGHCUT_ROOM'] ?? 'core';

export default defineConfig({
  test: {
    environment: 'node',
    include: [`src/${room}/**/*.test.ts`],
    setupFiles: ['test/fixedSeed.ts'],
    isolate: false,
    testTimeout: 60_000,
  },
});
