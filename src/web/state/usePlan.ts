import type { PlanQuestion, PlanReply } from '../worker/planMessages.ts';
import { useOnThread, type OnThread } from './useOnThread.ts';

/** Plans an order on a thread of its own. Give the same object for the same question; undefined: nothing is asked. */
export const usePlan = (question: PlanQuestion | undefined): OnThread<PlanReply> =>
  useOnThread<PlanReply>(question, planThread);

/** Starts the thread from the built page. */
const planThread = (): Worker =>
  new Worker(new URL('../worker/plan.ts', import.meta.url), { type: 'module', name: 'plan' });
