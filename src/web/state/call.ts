import { z } from 'zod';
import { done, refused, type Outcome, type Problem } from '../../core/problem.ts';
import {
  addressOf,
  errorReply,
  type BodyOf,
  type ParamsOf,
  type QueryOf,
  type ReplyOf,
} from '../../wire/api.ts';
import type { Route } from '../../wire/route.ts';
import type { WebCode } from '../codes.ts';

/** What the server refused, in the server's own words; or that it was not reached. */
export type CallProblem =
  | { readonly kind: 'away'; readonly problem: Problem }
  | {
      readonly kind: 'refused';
      readonly status: number;
      readonly message: string;
      readonly remedy: string;
    };

export type CallOutcome<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: CallProblem };

export interface Asked<R extends Route> {
  readonly params?: ParamsOf<R>;
  readonly query?: QueryOf<R>;
  readonly body?: BodyOf<R>;
}

/** Calls one route of the server and checks what comes back against the shape that both sides share. */
export const call = async <R extends Route>(
  route: R,
  asked: Asked<R> = {},
): Promise<CallOutcome<ReplyOf<R>>> => {
  const address = addressOf(route, textsOf(asked.params), textsOf(asked.query));
  const sent = await sending(address, route.method, asked.body);
  if (!sent.ok) return { ok: false, why: { kind: 'away', problem: sent.problem } };
  const { status, json } = sent.value;
  if (status >= 500) return { ok: false, why: { kind: 'away', problem: away } };
  if (status >= 400) return { ok: false, why: refusalIn(status, json) };
  const reply = (route.reply ?? z.unknown()).safeParse(json);
  return reply.success
    ? // The shape was checked by the route's own schema in the line above.
      { ok: true, value: reply.data as ReplyOf<R> }
    : {
        ok: false,
        why: { kind: 'away', problem: { code: 'reply-not-understood', params: { address } } },
      };
};

/** For readers that live on exceptions, such as the query cache. */
export const callOrThrow = async <R extends Route>(
  route: R,
  asked: Asked<R> = {},
): Promise<ReplyOf<R>> => {
  const outcome = await call(route, asked);
  if (outcome.ok) return outcome.value;
  throw new CallFailed(outcome.why);
};

export class CallFailed extends Error {
  readonly why: CallProblem;
  constructor(why: CallProblem) {
    super(why.kind === 'refused' ? why.message : why.problem.code);
    this.why = why;
  }
}

const away: Problem & { readonly code: WebCode } = { code: 'server-away', params: {} };

interface Received {
  readonly status: number;
  readonly json: unknown;
}

const sending = async (
  address: string,
  method: string,
  body: unknown,
): Promise<Outcome<Received>> => {
  try {
    const response = await fetch(address, {
      method,
      ...(body === undefined
        ? {}
        : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
    });
    const text = await response.text();
    const json: unknown = text === '' ? undefined : JSON.parse(text);
    return done({ status: response.status, json });
  } catch {
    return refused(away.code);
  }
};

const refusalIn = (status: number, json: unknown): CallProblem => {
  const read = errorReply.safeParse(json);
  const { message, remedy } = read.success
    ? read.data.error
    : {
        message: `The workshop computer refused this (${String(status)}).`,
        remedy: 'Reload the page.',
      };
  return { kind: 'refused', status, message, remedy };
};

const texts = z.record(z.string(), z.union([z.string(), z.number()]).transform(String)).catch({});
const textsOf = (given: unknown): Record<string, string> =>
  given === undefined ? {} : texts.parse(given);
