import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import { done, type Outcome } from '../core/problem.ts';
import { parseWith } from '../formats/border.ts';
import type { ReplyOf, Route } from '../wire/route.ts';
import { sendRefusal } from './refusal.ts';

type Read<S> = S extends z.ZodType ? z.output<S> : undefined;

/** What came in, checked against the route's shapes. */
export interface Asked<R extends Route> {
  readonly params: Read<R['params']>;
  readonly query: Read<R['query']>;
  readonly body: Read<R['body']>;
  readonly request: FastifyRequest;
  /** Says when whoever asked has gone without waiting for the answer. */
  readonly gone: AbortSignal;
  readonly reply: FastifyReply;
}

interface RouteOptions {
  /** Most bytes of a body; the server's own limit where absent. */
  readonly bodyLimit?: number;
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
  ask: (asked: Asked<R>) => Promise<Outcome<ReplyOf<R>>>,
  { bodyLimit, triesAMinute }: RouteOptions = {},
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
      return reply.sent ? reply : reply.send(outcome.value);
    },
  });
};

const read = <R extends Route>(
  route: R,
  request: FastifyRequest,
  reply: FastifyReply,
): Outcome<Asked<R>> => {
  const params = part(route.params, request.params);
  if (!params.ok) return params;
  const query = part(route.query, request.query);
  if (!query.ok) return query;
  const body = part(route.body, request.body ?? null);
  if (!body.ok) return body;
  // The three were parsed by the very shapes that the type is made of.
  const parts = { params: params.value, query: query.value, body: body.value };
  return done({ ...parts, request, reply, gone: goneOf(reply) } as Asked<R>);
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
