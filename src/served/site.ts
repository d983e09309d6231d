import type { z } from 'zod';
import type { Author } from '../core/author.ts';
import type { Outcome } from '../core/problem.ts';
import type { ReplyOf, Route } from '../wire/route.ts';
import type { FileAnswer } from './fileAnswer.ts';

type Read<S> = S extends z.ZodType ? z.output<S> : undefined;

/** What came in, checked against the route's shapes. */
export interface Asked<R extends Route> {
  readonly params: Read<R['params']>;
  readonly query: Read<R['query']>;
  readonly body: Read<R['body']>;
  /** The body of a route that takes a file; absent where none came. */
  readonly file?: Uint8Array;
  /** Who it is that asks. */
  readonly author: Author;
  /** Says when whoever asked has gone without waiting for the answer. */
  readonly gone: AbortSignal;
}

export type Ask<R extends Route> = (asked: Asked<R>) => Promise<Outcome<ReplyOf<R> | FileAnswer>>;

export interface RouteOptions {
  /** Most bytes of a body; the site's own limit where absent. */
  readonly bodyLimit?: number;
}

/**
 * Where the routes of the wire are answered: a server, or whatever else can be asked. It reads what comes in by a route's shapes,
 * asks, and prints; a refusal of either leaves in words.
 */
export interface Site {
  readonly put: <R extends Route>(route: R, ask: Ask<R>, options?: RouteOptions) => void;
}
