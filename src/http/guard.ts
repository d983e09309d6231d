import type { FastifyInstance } from 'fastify';
import { sendRefusal } from './refusal.ts';

/**
 * Keeps other web pages out. A page elsewhere can make its own name point at this computer and then read what is here
 * as if it were its own: so the name that was asked for must be one of ours. And it can send a form here without
 * reading the answer: so a change must come from our own page, or from no page at all.
 */
export const guard = (app: FastifyInstance, isOurHost: (hostname: string) => boolean): void => {
  app.addHook('onRequest', async (request, reply) => {
    const { host, origin } = request.headers;
    if (host === undefined || !isOurHost(hostnameOf(host)))
      return sendRefusal(reply, { code: 'foreign-host', params: { host: host ?? 'none' } });
    const reads = request.method === 'GET' || request.method === 'HEAD';
    const site = request.headers['sec-fetch-site'];
    const foreign =
      (origin !== undefined && origin !== `${request.protocol}://${host}`) ||
      (site !== undefined && site !== 'same-origin' && site !== 'none');
    return !reads && foreign
      ? sendRefusal(reply, { code: 'foreign-page', params: { origin: origin ?? 'another page' } })
      : undefined;
  });
};

/** This computer, as its own browser may call it. */
export const isLoopback = (hostname: string): boolean =>
  ['localhost', '127.0.0.1', '[::1]'].includes(hostname);

/** Without the port. */
const hostnameOf = (host: string): string => host.replace(/:\d*$/, '').toLowerCase();
