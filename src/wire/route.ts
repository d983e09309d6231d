import type { z } from 'zod';
import type { LeastRole, Role } from '../core/role.ts';

/**
 * One route as both sides see it: the server checks what comes in and prints what goes out by the same shapes that
 * the page is typed by.
 */
export interface Route {
  readonly method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
  /** With `:name` for each of `params`. */
  readonly path: string;
  /** Who may call it. Whoever sits at this computer may call all. */
  readonly least: LeastRole;
  /** What takes more, where the body says it: by its field. */
  readonly leastToSay?: Readonly<Record<string, Role>>;
  /** One line for the API page. */
  readonly summary: string;
  readonly params?: z.ZodType;
  readonly query?: z.ZodType;
  readonly body?: z.ZodType;
  /** Content types of the file that is the body. */
  readonly takes?: readonly string[];
  /** What a 200 carries. Absent: a file, or nothing. */
  readonly reply?: z.ZodType;
}

/** Keeps the exact shapes of a route in its type. */
export const route = <const R extends Route>(definition: R): R => definition;

/** What may be handed over without a copy: nobody changes it. */
export type Frozen<T> = T extends readonly (infer E)[]
  ? number extends T['length']
    ? readonly Frozen<E>[]
    : { readonly [K in keyof T]: Frozen<T[K]> }
  : T extends object
    ? { readonly [K in keyof T]: Frozen<T[K]> }
    : T;

type Fed<S> = S extends z.ZodType ? Frozen<z.input<S>> : undefined;

/** What the page sends. */
export type ParamsOf<R extends Route> = Fed<R['params']>;
export type QueryOf<R extends Route> = Fed<R['query']>;
export type BodyOf<R extends Route> = Fed<R['body']>;

/** What comes back. */
export type ReplyOf<R extends Route> = R['reply'] extends z.ZodType
  ? Frozen<z.output<R['reply']>>
  : undefined;

/** The address of a route: `:id` filled in and escaped, the query written behind. */
export const addressOf = (
  { path }: Pick<Route, 'path'>,
  params: Readonly<Record<string, string>> = {},
  query: Readonly<Record<string, string | number | undefined>> = {},
): string => {
  const filled = path.replace(/:([A-Za-z]+)/g, (whole, name: string) => {
    const value = params[name];
    return value === undefined ? whole : encodeURIComponent(value);
  });
  const asked = Object.entries(query).flatMap(([name, value]) =>
    value === undefined ? [] : [`${encodeURIComponent(name)}=${encodeURIComponent(value)}`],
  );
  return asked.length === 0 ? filled : `${filled}?${asked.join('&')}`;
};
