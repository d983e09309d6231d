import type { PromiseWish } from '../reading/promise.ts';
import { problemOf, type ProblemOf } from '../problem.ts';
import { countOrders } from './countedOrders.ts';
import type { Standing } from './standing.ts';

/** How a kept setting stands whose material is refused: no setting to run, no promise, the refusal as the reason. */
export const notToBeCut = (
  promise: PromiseWish,
  { params }: ProblemOf<'material-refused'>,
): Standing => ({
  kind: 'not-known',
  isGuess: false,
  why: problemOf('not-to-be-cut', params),
  next: 'nothing-to-do',
  promise,
  counted: countOrders(promise, []),
});
