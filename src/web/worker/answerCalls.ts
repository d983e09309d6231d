import type { AnswerOf, Asked, CallName, QuestionOf, Reply, StageOf } from './calls.ts';

/** What a thread can be asked: a function for each of its calls. */
export type Answers<Call extends CallName> = {
  readonly [One in Call]: (
    question: QuestionOf<One>,
    tell: (stage: StageOf<One>) => void,
  ) => AnswerOf<One> | Promise<AnswerOf<One>>;
};

/** Answers what is asked of a thread, and says what broke. */
export const answerCalls =
  <Call extends CallName>(answers: Answers<Call>) =>
  async ({ id, call, question }: Asked, say: (reply: Reply) => void): Promise<void> => {
    try {
      // The page asks a thread what it can: its questions are typed where they are sent.
      const answer = answers[call as Call] as (asked: unknown, tell: unknown) => unknown;
      const tell = (stage: unknown): void => say({ id, kind: 'stage', stage });
      say({ id, kind: 'answer', answer: await answer(question, tell) });
    } catch (error) {
      say({ id, kind: 'broke', message: error instanceof Error ? error.message : String(error) });
    }
  };
