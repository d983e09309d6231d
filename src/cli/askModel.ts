import type { QuestionOf, SumName, SumOutcome } from '../app/sums/model.ts';
import { commandModel } from '../host/systemModel.ts';

/** Makes one sum in a thread, which ends with it: a minute at most, then words. */
export const askModel = async <K extends SumName>(
  name: K,
  question: QuestionOf<K>,
): Promise<SumOutcome<K>> => {
  const sums = commandModel();
  try {
    return await sums.modelFor().ask(name, question);
  } finally {
    await sums.close();
  }
};
