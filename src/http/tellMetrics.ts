import { createHash, timingSafeEqual } from 'node:crypto';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { problemOf } from '../core/problem.ts';
import { atDesk } from './atDesk.ts';
import { metricsContentType, type Metrics } from './metrics.ts';
import { sendRefusal } from './refusal.ts';

/**
 * `/metrics`, for a program that watches others: asked at this computer, or from elsewhere with the token that was set, as
 * `Authorization: Bearer`. It is no route of the page's, so it stands outside /api.
 */
export const tellMetrics = (
  app: FastifyInstance,
  metrics: Metrics,
  token: string | undefined,
): void => {
  app.get('/metrics', (request, reply) =>
    atDesk(request) || showsToken(request, token)
      ? reply.header('cache-control', 'no-store').type(metricsContentType).send(metrics.text())
      : sendRefusal(reply, problemOf('metrics-token-needed')),
  );
};

const showsToken = ({ headers }: FastifyRequest, token = ''): boolean =>
  token !== '' && same(headers.authorization ?? '', `Bearer ${token}`);

/** In a time that tells nothing of where they differ. */
const same = (one: string, other: string): boolean => {
  const [a, b] = [one, other].map((text) => createHash('sha256').update(text).digest());
  return a !== undefined && b !== undefined && timingSafeEqual(a, b);
};
