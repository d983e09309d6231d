import type { Explanation, LeftOut, SpeedExplained } from '../core/explain/explanation.ts';
import { fitAnswerFile, type FitAnswerFile, type Said, type Say } from './answerFile.ts';

/** A part left out, its reason in words; its figures to the digits that mean something. */
type InWords<T extends LeftOut> = Omit<T, 'reason'> & { readonly reason?: Said };

/** An explanation as the command line prints it. */
export type ExplanationFile = Omit<Explanation, 'answer' | 'speed'> & {
  readonly answer: FitAnswerFile;
  readonly speed: object | null;
};

export const explanationFile = (
  { answer, speed, ...explanation }: Explanation,
  say: Say,
): ExplanationFile => ({
  ...explanation,
  answer: fitAnswerFile(answer, say),
  speed: speed === undefined ? null : speedInWords(speed, say),
});

const speedInWords = (speed: SpeedExplained, say: Say): object => {
  const { cells, rungs, cards, orders, habit, earlier, ...rest } = speed;
  const each = <T extends LeftOut>({ reason, ...left }: T): InWords<T> => {
    if (reason === undefined) return left;
    const { code, message } = say(reason);
    return { ...left, reason: { code, message } };
  };
  return {
    ...rest,
    cells: cells.map((left) => (left === null ? null : each(left))),
    rungs: rungs.map(each),
    cards: cards.map(each),
    orders: orders.map(each),
    ...(habit === undefined ? {} : { habit: each(habit) }),
    earlier: earlier.map(each),
  };
};
