import { createHash } from 'node:crypto';
import type { Model, QuestionOf, SumName, SumOutcome } from '../app/sums/model.ts';

/** An answer is some hundred bytes to a few kB. */
const mostKept = 5000;

/**
 * How a kept setting stands is asked anew with every page and table of the book, while what it is asked from seldom changes: the
 * answer is remembered by the whole question, so that no memory can be stale. Threads remember what they are about for some
 * sheets; this is for a long book. Refusals are not remembered: what took too long may not the next time.
 */
export const rememberingKept = <G>(modelFor: (gone: G) => Model): ((gone: G) => Model) => {
  const known = new Map<string, SumOutcome<'judgeKept'>>();
  const judged = async (
    model: Model,
    question: QuestionOf<'judgeKept'>,
    about?: string,
  ): Promise<SumOutcome<'judgeKept'>> => {
    const key = createHash('sha256').update(JSON.stringify(question)).digest('base64');
    const before = known.get(key);
    const found = before ?? (await model.ask('judgeKept', question, about));
    if (!found.ok) return found;
    // The newest last.
    known.delete(key);
    known.set(key, found);
    const [oldest] = known.keys();
    if (known.size > mostKept && oldest !== undefined) known.delete(oldest);
    return found;
  };
  return (gone) => {
    const model = modelFor(gone);
    // What is asked of kept settings is answered as such; all else goes through as it is.
    const ask = (name: SumName, question: never, about?: string): Promise<unknown> =>
      name === 'judgeKept' ? judged(model, question, about) : model.ask(name, question, about);
    return { ask: ask as Model['ask'] };
  };
};
