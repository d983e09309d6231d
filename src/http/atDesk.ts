import type { FastifyRequest } from 'fastify';

/** Whether a request comes from this computer itself. */
export const atDesk = ({ socket }: FastifyRequest): boolean =>
  ['127.0.0.1', '::1', '::ffff:127.0.0.1'].includes(socket.remoteAddress ?? '');
