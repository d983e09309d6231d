import type { StandingCode } from '../problems/standing.ts';
import { answerSpeed, oneStepSurer } from '../cutmodel/answerSpeed.ts';
import { problemOf, type ProblemOf } from '../problem.ts';
import type { AnswerSeen, KeptSeen } from './evidence.ts';
import type { NextAct, StandingKind } from './standing.ts';

/** One thing that the evidence says of the setting. */
export interface Finding {
  readonly kind: StandingKind;
  readonly why: ProblemOf<StandingCode>;
  readonly next: NextAct;
  /** Nobody should run faster than that until it is checked. */
  readonly atMostMmPerS?: number;
}

/**
 * The fastest that may be run by all that holds it down, never slower than what stays open: what welds back comes out no more
 * surely for being cut slower.
 */
export const heldDown = (
  speedMmPerS: number,
  atMostMmPerS: readonly number[],
  answer: Pick<AnswerSeen, 'staysOpenFromMmPerS'> | undefined,
): number =>
  Math.min(
    speedMmPerS,
    Math.max(answer?.staysOpenFromMmPerS ?? 0, Math.min(...atMostMmPerS.map(answerSpeed))),
  );

/** Where the sheet's cards and orders, as they now are, no longer carry the kept setting. */
export const answerFindings = (
  kept: Pick<KeptSeen, 'setting'>,
  answer: AnswerSeen,
): readonly Finding[] => {
  const { speedMmPerS } = kept.setting;
  const { holdsAtKeptMmPerS: holds, staysOpenFromMmPerS: bestMmPerS } = answer;
  if (holds === null && bestMmPerS !== undefined)
    return [
      {
        kind: 'watch-it',
        why: problemOf('no-answer-since-it-welds', { bestMmPerS }),
        next: 'cut-card',
        atMostMmPerS: bestMmPerS,
      },
    ];
  if (holds === null)
    return [
      {
        kind: 'watch-it',
        why: problemOf('no-answer-any-more'),
        next: 'cut-card',
        atMostMmPerS: oneStepSurer(speedMmPerS),
      },
    ];
  if (holds >= speedMmPerS - 1e-9) return [];
  const isFar = holds < oneStepSurer(speedMmPerS) - 1e-9;
  return [
    {
      kind: isFar ? 'failed' : 'watch-it',
      why: problemOf('cards-say-slower', { speedMmPerS, holdsMmPerS: answerSpeed(holds) }),
      next: isFar ? 'cut-strip' : 'count-order',
      atMostMmPerS: holds,
    },
  ];
};
