import type { PlannedOrder, PlanQuestion } from '../../app/sums/planOrder.ts';
import type { Outcome } from '../../core/problem.ts';

/** What the page asks of the thread that plans orders. */
export type { PlanQuestion };

/** What comes back. `broke`: a bug, told so that the page can say it. */
export type PlanReply =
  | { readonly kind: 'planned'; readonly planned: Outcome<PlannedOrder> }
  | { readonly kind: 'broke'; readonly message: string };
