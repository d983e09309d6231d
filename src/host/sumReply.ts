import type { Outcome } from '../core/problem.ts';

/** What a thread says of a sum: what came of it, or what broke in it. */
export type SumReply =
  { readonly outcome: Outcome<unknown> } | { readonly message: string; readonly stack: string };
