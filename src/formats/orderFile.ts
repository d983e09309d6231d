import type { OrderAnswer } from '../core/order/orderAnswer.ts';
import type { Outcome, Problem } from '../core/problem.ts';
import type { Said, Say } from './answerFile.ts';

/** The answer to an order as the command line prints it: what it says put into words. */
export type OrderFile = { readonly warnings: readonly Said[] } & (
  | (Omit<OrderAnswer, 'whyNotNone'> & { readonly whyNotNone?: Said })
  | { readonly version: 1; readonly chosen: null; readonly reason: Said }
);

/** No setting is an answer as well: it says why. */
export const orderFile = (
  outcome: Outcome<OrderAnswer>,
  ofMaterial: readonly Problem[],
  say: Say,
): OrderFile => {
  const spoken = (problem: Parameters<Say>[0]): Said => {
    const { code, message } = say(problem);
    return { code, message };
  };
  const warnings = ofMaterial.map(spoken);
  if (!outcome.ok) return { version: 1, chosen: null, reason: spoken(outcome.problem), warnings };
  const { whyNotNone, ...answer } = outcome.value;
  return {
    ...answer,
    ...(whyNotNone === undefined ? {} : { whyNotNone: spoken(whyNotNone) }),
    warnings,
  };
};
