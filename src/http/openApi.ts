import swagger from '@fastify/swagger';
import type { FastifyInstance } from 'fastify';
import { jsonSchemaTransform } from 'fastify-type-provider-zod';

/** Describes every route that is put on the server after this, at /api/openapi.json. */
export const describeApi = async (app: FastifyInstance, version: string): Promise<void> => {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Throughcut',
        version,
        description:
          'The server of one workshop. Every refusal is {"error": {"code", "message", "remedy"}} with a status of 4xx, and changes nothing.',
      },
    },
    transform: jsonSchemaTransform,
  });
  app.get('/api/openapi.json', { schema: { hide: true } }, () => app.swagger());
};
