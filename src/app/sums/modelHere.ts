import type { Model, QuestionOf, SumName, SumOutcome } from './model.ts';
import { modelSums } from './modelSums.ts';

/** One sum, found by its name. */
export const runSum = <K extends SumName>(
  name: K,
  question: QuestionOf<K>,
): Promise<SumOutcome<K>> => {
  const sum = modelSums[name] as (asked: QuestionOf<K>) => Promise<SumOutcome<K>>;
  return sum(question);
};

/** Sums in the caller's own thread, however long they take: for tests and benches. */
export const modelHere: Model = { ask: runSum };
