import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import { done, type Outcome } from '../core/problem.ts';
import { parseWith } from '../formats/border.ts';
import type { ReplyOf, Route } from '../wire/route.ts';
import { FileAnswer } from '../served/fileAnswer.ts';
import type { Asked, RouteOptions, Site } from '../served/site.ts';
import { sendRefusal } from './refusal.ts';

/** What came in, and the request and the reply themselves for what is the server's own affair. */
export interface AskedHere<R extends Route> extends Asked<R> {
  readonly request: FastifyRequest;
  readonly reply: FastifyReply;
}

interface OwnRouteOptions extends RouteOptions {
  /** Most requests that one address may make in a minute, where the server counts them. */
  readonly triesAMinute?: number;
}

/**
 * Puts a route of the wire on the server: parse by its shapes, ask the use-case, print. A refusal of either leaves in
 * words and with its status.
 */
export const on = <R extends Route>(
  app: FastifyInstance,
  route: R,
  ask: (asked: AskedHere<R>) => Promise<Outcome<ReplyOf<R> | FileAnswer>>,
  { bodyLimit, triesAMinute }: OwnRouteOptions = {},
): void => {
  app.route({
    method: route.method,
    url: route.path,
    ...(bodyLimit === undefined ? {} : { bodyLimit }),
    ...(triesAMinute === undefined
      ? {}
      : { config: { rateLimit: { max: triesAMinute, timeWindow: 60_000 } } }),
    handler: async (request, reply) => {
      const asked = read(route, request, reply);
      const outcome = asked.ok ? await ask(asked.value) : asked;
      if (!outcome.ok) return sendRefusal(reply, outcome.problem);
      if (reply.sent) return reply;
      const { value } = outcome;
      return value instanceof FileAnswer ? sendFile(reply, value) : reply.send(value);
    },
  });
};

/** The server as the place where routes are answered. */
export const siteOn = (app: FastifyInstance): Site => ({
  put: (route, ask, options) => {
    on(app, route, ask, options);
  },
});

const read = <R extends Route>(
  route: R,
  request: FastifyRequest,
  reply: FastifyReply,
): Outcome<AskedHere<R>> => {
  const params = part(route.params, request.params);
  if (!params.ok) return params;
  const query = part(route.query, request.query);
  if (!query.ok) return query;
  const body = part(route.body, request.body ?? null);
  if (!body.ok) return body;
  // The three were parsed by the very shapes that the type is made of.
  const parts = { params: params.value, query: query.value, body: body.value };
  const file = request.body instanceof Uint8Array ? { file: request.body } : {};
  return done({ ...parts, ...file, request, reply, gone: goneOf(reply) } as AskedHere<R>);
};

const sendFile = (
  reply: FastifyReply,
  { contentType, disposition, body }: FileAnswer,
): FastifyReply => {
  if (disposition !== undefined) reply.header('content-disposition', disposition);
  return reply.type(contentType).send(typeof body === 'string' ? body : Buffer.from(body));
};

const goneOf = ({ raw }: FastifyReply): AbortSignal => {
  const gone = new AbortController();
  raw.once('close', () => {
    if (!raw.writableFinished) gone.abort();
  });
  return gone.signal;
};

const part = (shape: z.ZodType | undefined, value: unknown): Outcome<unknown> =>
  shape === undefined ? done(undefined) : parseWith(shape, value);
