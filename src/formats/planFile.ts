import { rungLetter } from '../core/card/rungLetter.ts';
import type { PlanCode } from '../core/problems/plan.ts';
import type { Plan, PlanAct } from '../core/plan/planNext.ts';
import type { KeptUpTo, SheetForecast } from '../core/plan/sheetForecast.ts';
import type { Problem } from '../core/problem.ts';
import type { Said, Say } from './answerFile.ts';

type CardAct = Extract<PlanAct, { readonly act: 'card' }>;

/** The next act; a card's settings have their letters. */
type NextAct =
  | Exclude<PlanAct, CardAct>
  | {
      readonly act: 'card';
      readonly cells: readonly (Omit<CardAct['cells'][number], 'rung'> & {
        readonly rung: string;
      })[];
    };

/** A plan's next act as the command line and the server give it (docs/formats/study.md). */
export interface PlanFile {
  readonly version: 1;
  readonly next: NextAct;
  readonly reason: Said & { readonly code: PlanCode };
  readonly expected: Plan['expected'];
  /** What is to be expected of the next sheet. */
  readonly sheet?: SheetForecast;
  /** Where the fastest speed that keeps the promise lies by now. */
  readonly keeps?: KeptUpTo;
  readonly warnings: readonly Said[];
}

/** Puts a plan's reason into words and its figures to what they are worth: a tenth of a minute, a hundredth of a part. */
export const planFile = (plan: Plan, ofMaterial: readonly Problem[], say: Say): PlanFile => {
  const spoken = (problem: Problem): Said => {
    const { code, message } = say(problem);
    return { code, message };
  };
  const { next, expected, sheet, keeps } = plan;
  const tenth = (value: number): number => Math.round(10 * value) / 10;
  return {
    version: 1,
    next:
      next.act === 'card'
        ? { ...next, cells: next.cells.map((cell) => ({ ...cell, rung: rungLetter(cell.rung) })) }
        : next,
    reason: { code: plan.reason.code, message: say(plan.reason).message },
    expected: {
      minutes: tenth(expected.minutes),
      minutesBand: [tenth(expected.minutesBand[0]), tenth(expected.minutesBand[1])],
      notOutOf100: Math.round(100 * expected.notOutOf100) / 100,
      againstCardsFirstMinutes: tenth(expected.againstCardsFirstMinutes),
    },
    ...(sheet === undefined
      ? {}
      : {
          sheet: {
            ...sheet,
            notOut: tenth(sheet.notOut),
            outOf100: tenth(sheet.outOf100),
            sureOfPromisePct: Math.round(sheet.sureOfPromisePct),
          },
        }),
    ...(keeps === undefined ? {} : { keeps }),
    warnings: ofMaterial.map(spoken),
  };
};
