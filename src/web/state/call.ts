import { problemOf, type Problem } from '../../core/problem.ts';
import type { Addressed } from '../../wire/pageApi.ts';
import {
  addressOf,
  type BodyOf,
  type ParamsOf,
  type QueryOf,
  type ReplyOf,
  type Route,
} from '../../wire/route.ts';
import { problemInWords } from './inWords.ts';
import { workshopReach } from './reach.ts';

/** What the server refused, in its own words. */
export interface Refusal {
  readonly kind: 'refused';
  readonly status: number;
  readonly code?: string;
  readonly message: string;
  readonly remedy: string;
}

/** A refusal; or that nobody was there; or that whoever was there gave no answer that can be used. */
export type CallProblem =
  | Refusal
  | { readonly kind: 'away'; readonly problem: Problem }
  | { readonly kind: 'later'; readonly problem: Problem };

export type CallOutcome<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: CallProblem };

export interface Asked<R extends Route> {
  readonly params?: ParamsOf<R>;
  readonly query?: QueryOf<R>;
  readonly body?: BodyOf<R>;
  /** A file to be sent as the body. */
  readonly file?: Blob;
  /** Breaks the call off. */
  readonly stop?: AbortSignal;
  /** After so long an answer is waited for no more. */
  readonly timeLimitMs?: number;
}

const usualTimeLimitMs = 20_000;

/**
 * Calls one route of the server. What comes back is taken to have the shape that both sides share: it is our own server's,
 * which also brought this page.
 */
export const call = async <R extends Route>(
  route: Addressed<R>,
  asked: Asked<R> = {},
): Promise<CallOutcome<ReplyOf<R>>> => {
  const address = addressOf(route, textsIn(asked.params), textsIn(asked.query));
  const received = await receive(address, route.method, asked);
  if (!received.ok) return received;
  const { status, text } = received.value;
  const json = jsonIn(text);
  if (status >= 400) return { ok: false, why: refusalOf(status, text) };
  return json === undefined
    ? notNow(problemOf('reply-not-understood', { address }))
    : // The route's own shape, see above.
      { ok: true, value: json.value as ReplyOf<R> };
};

/** For readers that live on exceptions, such as the query cache. */
export const callOrThrow = async <R extends Route>(
  route: Addressed<R>,
  asked: Asked<R> = {},
): Promise<ReplyOf<R>> => {
  const outcome = await call(route, asked);
  if (outcome.ok) return outcome.value;
  throw new CallFailed(outcome.why);
};

export class CallFailed extends Error {
  readonly why: CallProblem;
  constructor(why: CallProblem) {
    super(whyInWords(why).message);
    this.why = why;
  }
}

/** What went wrong, in the server's words where it said some. */
export const whyInWords = (
  why: CallProblem,
): { readonly message: string; readonly remedy: string } =>
  why.kind === 'refused' ? why : problemInWords(why.problem);

/** Whether this phone has to be let in first. */
export const isNotLetIn = (why: CallProblem): boolean =>
  why.kind === 'refused' && why.status === 401;

type Failed = CallOutcome<never> & { readonly ok: false };

const nobody: Failed = {
  ok: false,
  why: { kind: 'away', problem: problemOf('server-away') },
};

const notNow = (problem: Problem): Failed => ({ ok: false, why: { kind: 'later', problem } });

interface Received {
  readonly status: number;
  readonly text: string;
}

const receive = async (
  address: string,
  method: string,
  { body, file, stop, timeLimitMs = usualTimeLimitMs }: Asked<Route>,
): Promise<CallOutcome<Received>> => {
  const ending = new AbortController();
  const end = (): void => ending.abort();
  const timer = setTimeout(end, timeLimitMs);
  stop?.addEventListener('abort', end);
  try {
    const response = await workshopReach().ask(address, {
      method,
      // A browser lets tabs that ask for one address in through its store one by one, each waiting for the one before.
      cache: 'no-store',
      signal: ending.signal,
      ...(file === undefined ? {} : { headers: { 'content-type': file.type }, body: file }),
      ...(body === undefined
        ? {}
        : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
    });
    return { ok: true, value: { status: response.status, text: await response.text() } };
  } catch {
    const isSlow = ending.signal.aborted && stop?.aborted !== true;
    return isSlow ? notNow(problemOf('server-slow', { seconds: timeLimitMs / 1000 })) : nobody;
  } finally {
    clearTimeout(timer);
    stop?.removeEventListener('abort', end);
  }
};

const jsonIn = (text: string): { readonly value: unknown } | undefined => {
  try {
    return { value: text === '' ? undefined : JSON.parse(text) };
  } catch {
    return undefined;
  }
};

/** What a refusal says, as the workshop's own words where it has some. */
export const refusalOf = (status: number, text: string): Refusal => {
  const json = jsonIn(text)?.value;
  const { message, remedy } = problemInWords({ code: 'server-refused', params: { status } });
  const error = fieldOf(json, 'error');
  return {
    kind: 'refused',
    status,
    code: textOf(fieldOf(error, 'code')) ?? '',
    message: textOf(fieldOf(error, 'message')) ?? message,
    remedy: textOf(fieldOf(error, 'remedy')) ?? remedy,
  };
};

const fieldOf = (value: unknown, name: string): unknown =>
  typeof value === 'object' && value !== null ? Reflect.get(value, name) : undefined;

const textOf = (value: unknown): string | undefined =>
  typeof value === 'string' ? value : undefined;

const textsIn = (given: unknown): Record<string, string> =>
  Object.fromEntries(
    Object.entries(given ?? {}).flatMap(([name, value]) =>
      typeof value === 'string' || typeof value === 'number' ? [[name, String(value)]] : [],
    ),
  );
