import type { FastifyInstance } from 'fastify';

/**
 * When the server is told to stop, answers that are under way are finished; after so many milliseconds whatever is still open is
 * cut, so that a request that never comes whole keeps nobody waiting.
 */
export const finishWithin = (app: FastifyInstance, ms: number): void => {
  let cut: NodeJS.Timeout | undefined;
  app.addHook('preClose', () => {
    cut = setTimeout(() => {
      app.server.closeAllConnections();
    }, ms);
    return Promise.resolve();
  });
  app.server.once('close', () => {
    clearTimeout(cut);
  });
};
