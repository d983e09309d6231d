import { existsSync } from 'node:fs';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance } from 'fastify';
import { sendRefusal } from './refusal.ts';

/**
 * Serves the built page. Addresses that the page itself understands get its first file; unknown addresses under /api
 * and unknown files are refused.
 */
export const servePage = async (
  app: FastifyInstance,
  folder: string | undefined,
): Promise<void> => {
  const built = folder !== undefined && existsSync(join(folder, 'index.html'));
  if (built) {
    await app.register(fastifyStatic, {
      root: folder,
      // Each part lies compressed beside itself, see vite.config.ts.
      preCompressed: true,
      cacheControl: false,
      setHeaders: (reply, path) => {
        // Vite names these by their content: they never change under one name.
        const lasting = /[\\/]assets[\\/]/.test(path);
        void reply.header(
          'cache-control',
          lasting ? 'public, max-age=31536000, immutable' : 'no-cache',
        );
      },
    });
  }
  app.setNotFoundHandler((request, reply) => {
    const path = request.url.split('?')[0] ?? '/';
    const forPage =
      request.method === 'GET' && !path.startsWith('/api/') && !/\.[a-z0-9]+$/i.test(path);
    if (built && forPage) return reply.header('cache-control', 'no-cache').sendFile('index.html');
    return sendRefusal(reply, { code: 'no-such-address', params: { address: path } });
  });
};
