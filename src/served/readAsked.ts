import type { z } from 'zod';
import type { Author } from '../core/author.ts';
import { done, type Outcome } from '../core/problem.ts';
import { parseWith } from '../formats/border.ts';
import type { Route } from '../wire/route.ts';
import type { Asked } from './site.ts';

/** What came in, before anything was checked. */
export interface CameIn {
  readonly params: unknown;
  readonly query: unknown;
  readonly body: unknown;
  readonly author: Author;
}

/** Reads what came in by a route's shapes. `gone`: see `Asked`. */
export const readAsked = <R extends Route>(
  route: R,
  came: CameIn,
  gone: AbortSignal,
): Outcome<Asked<R>> => {
  const params = part(route.params, came.params);
  if (!params.ok) return params;
  const query = part(route.query, came.query);
  if (!query.ok) return query;
  const body = part(route.body, came.body ?? null);
  if (!body.ok) return body;
  const file = came.body instanceof Uint8Array ? { file: came.body } : {};
  // The three were parsed by the very shapes that the type is made of.
  return done({
    params: params.value,
    query: query.value,
    body: body.value,
    ...file,
    author: came.author,
    gone,
  } as Asked<R>);
};

const part = (shape: z.ZodType | undefined, value: unknown): Outcome<unknown> =>
  shape === undefined ? done(undefined) : parseWith(shape, value);
