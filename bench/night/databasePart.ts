import type { NightPart } from './nightPart.ts';
import { runTests } from './runTests.ts';

/** What is promised of the embedded store, on a PostgreSQL server of its own: killed, cut, promoted, moved, asked anything. */
export const databasePart: NightPart = {
  name: 'database',
  about:
    'a workshop on a PostgreSQL server: killed under load, cut, moved, and saying the same as a file',
  run: () =>
    runTests(['test/conformance/postgres.test.ts', 'test/postgres'], {
      atLeast: 60,
      environment: { THROUGHCUT_EVERY_CASE: '1' },
    }),
};
