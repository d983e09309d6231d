import { Readable } from 'node:stream';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Author } from '../core/author.ts';
import type { Outcome } from '../core/problem.ts';
import type { ReplyOf, Route } from '../wire/route.ts';
import { FileAnswer } from '../served/fileAnswer.ts';
import { readAsked } from '../served/readAsked.ts';
import type { Asked, RouteOptions, Site } from '../served/site.ts';
import { sendRefusal } from './refusal.ts';

/** What came in, and the request and the reply themselves for what is the server's own affair. */
export interface AskedHere<R extends Route> extends Asked<R> {
  readonly request: FastifyRequest;
  readonly reply: FastifyReply;
}

declare module 'fastify' {
  interface FastifyContextConfig {
    least?: Route['least'];
    leastToSay?: NonNullable<Route['leastToSay']>;
  }
}

interface OwnRouteOptions extends RouteOptions {
  /** Most requests that one address may make in a minute, where the server counts them. */
  readonly triesAMinute?: number;
  /** Who it is that asks. Absent: it is nobody's business. */
  readonly authorOf?: AuthorOf;
}

/** By what name whoever asks goes. */
export type AuthorOf = (request: FastifyRequest) => Author;

/**
 * Puts a route of the wire on the server: parse by its shapes, ask the use-case, print. A refusal of either leaves in
 * words and with its status.
 */
export const on = <R extends Route>(
  app: FastifyInstance,
  route: R,
  ask: (asked: AskedHere<R>) => Promise<Outcome<ReplyOf<R> | FileAnswer>>,
  { bodyLimit, triesAMinute, authorOf = () => ({}) }: OwnRouteOptions = {},
): void => {
  app.route({
    method: route.method,
    url: route.path,
    ...(bodyLimit === undefined ? {} : { bodyLimit }),
    config: {
      least: route.least,
      ...(route.leastToSay === undefined ? {} : { leastToSay: route.leastToSay }),
      ...(triesAMinute === undefined
        ? {}
        : { rateLimit: { max: triesAMinute, timeWindow: 60_000 } }),
    },
    handler: async (request, reply) => {
      const { params, query, body } = request;
      const came = { params, query, body, author: authorOf(request) };
      const asked = readAsked(route, came, goneOf(reply));
      const outcome = asked.ok ? await ask({ ...asked.value, request, reply }) : asked;
      if (!outcome.ok) return sendRefusal(reply, outcome.problem);
      if (reply.sent) return reply;
      const { value } = outcome;
      return value instanceof FileAnswer ? sendFile(reply, value) : reply.send(value);
    },
  });
};

/** The server as the place where routes are answered. */
export const siteOn = (app: FastifyInstance, authorOf: AuthorOf): Site => ({
  put: (route, ask, options) => {
    on(app, route, ask, { ...options, authorOf });
  },
});

const sendFile = (
  reply: FastifyReply,
  { contentType, disposition, body }: FileAnswer,
): FastifyReply => {
  if (disposition !== undefined) reply.header('content-disposition', disposition);
  reply.type(contentType);
  if (typeof body === 'string') return reply.send(body);
  return reply.send('pieces' in body ? Readable.from(inTurns(body.pieces)) : Buffer.from(body));
};

/** So much is sent at once, in characters. */
const sentAtOnce = 65_536;

/** Everybody else gets a turn between what is sent at once. */
async function* inTurns(pieces: Iterable<string>): AsyncGenerator<string> {
  let gathered = '';
  for (const piece of pieces) {
    gathered += piece;
    if (gathered.length < sentAtOnce) continue;
    yield gathered;
    gathered = '';
    await new Promise(setImmediate);
  }
  yield gathered;
}

const goneOf = ({ raw }: FastifyReply): AbortSignal => {
  const gone = new AbortController();
  raw.once('close', () => {
    if (!raw.writableFinished) gone.abort();
  });
  return gone.signal;
};
