import type { DatabaseConnection } from 'kysely';

/** So long is worked at a stretch, in milliseconds: a request that asks nothing of the store waits no longer. */
const stretchMs = 10;

/** When this thread last took up what waited. */
let turnedAt = 0;

/**
 * The same connection, whose work gives everybody else in this thread a turn from time to time: the embedded engine answers at
 * once, so that a session of ten thousand questions would keep the thread to itself from its beginning to its end.
 */
export const givingTurns = (connection: DatabaseConnection): DatabaseConnection => ({
  executeQuery: async (query) => {
    if (performance.now() - turnedAt > stretchMs) {
      await new Promise(setImmediate);
      turnedAt = performance.now();
    }
    return connection.executeQuery(query);
  },
  streamQuery: (query, chunk) => connection.streamQuery(query, chunk),
});
