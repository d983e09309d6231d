import { planOrder } from '../../app/sums/planOrder.ts';
import type { PlanQuestion, PlanReply } from './planMessages.ts';

/** The next act of an order, by the verb that the server and the program ask. */
export const answerPlan = (question: PlanQuestion): PlanReply => {
  try {
    return { kind: 'planned', planned: planOrder(question) };
  } catch (error) {
    return { kind: 'broke', message: error instanceof Error ? error.message : String(error) };
  }
};
