import { answerSpeed, oneStepSurer } from '../cutmodel/answerSpeed.ts';
import type { Problem } from '../problem.ts';
import type { StandingCode } from './codes.ts';
import type { AnswerSeen, KeptSeen } from './evidence.ts';
import type { NextAct, StandingKind } from './standing.ts';

/** One thing that the evidence says of the setting. */
export interface Finding {
  readonly kind: StandingKind;
  readonly code: StandingCode;
  readonly params?: Problem['params'];
  readonly next: NextAct;
  /** Nobody should run faster than that until it is checked. */
  readonly atMostMmPerS?: number;
}

/** Where the sheet's cards and orders, as they now are, no longer carry the kept setting. */
export const answerFindings = (
  kept: Pick<KeptSeen, 'setting'>,
  answer: AnswerSeen,
): readonly Finding[] => {
  const { speedMmPerS } = kept.setting;
  const holds = answer.holdsAtKeptMmPerS;
  if (holds === null)
    return [
      {
        kind: 'watch-it',
        code: 'no-answer-any-more',
        next: 'cut-card',
        atMostMmPerS: oneStepSurer(speedMmPerS),
      },
    ];
  if (holds >= speedMmPerS - 1e-9) return [];
  const isFar = holds < oneStepSurer(speedMmPerS) - 1e-9;
  return [
    {
      kind: isFar ? 'failed' : 'watch-it',
      code: 'cards-say-slower',
      params: { speedMmPerS, holdsMmPerS: answerSpeed(holds) },
      next: isFar ? 'cut-strip' : 'count-order',
      atMostMmPerS: holds,
    },
  ];
};
