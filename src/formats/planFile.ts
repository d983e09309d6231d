import { rungLetter } from '../core/card/rungLetter.ts';
import type { Plan } from '../core/plan/planNext.ts';
import type { Problem } from '../core/problem.ts';
import type { Said, Say } from './answerFile.ts';

/** A plan's next act as the command line and the server give it (docs/formats/study.md). */
export interface PlanFile {
  readonly version: 1;
  readonly next: unknown;
  readonly reason: Said;
  readonly expected: Plan['expected'];
  readonly warnings: readonly Said[];
}

/** Puts a plan's reason into words and its figures to what they are worth: a tenth of a minute, a hundredth of a part. */
export const planFile = (plan: Plan, ofMaterial: readonly Problem[], say: Say): PlanFile => {
  const spoken = (problem: Problem): Said => {
    const { code, message } = say(problem);
    return { code, message };
  };
  const { next, expected } = plan;
  const tenth = (value: number): number => Math.round(10 * value) / 10;
  return {
    version: 1,
    next:
      next.act === 'card'
        ? { ...next, cells: next.cells.map((cell) => ({ ...cell, rung: rungLetter(cell.rung) })) }
        : next,
    reason: spoken(plan.reason),
    expected: {
      minutes: tenth(expected.minutes),
      minutesBand: [tenth(expected.minutesBand[0]), tenth(expected.minutesBand[1])],
      notOutOf100: Math.round(100 * expected.notOutOf100) / 100,
      againstCardsFirstMinutes: tenth(expected.againstCardsFirstMinutes),
    },
    warnings: ofMaterial.map(spoken),
  };
};
