import type { FitAnswer } from '../../../core/cutmodel/fitAnswer.ts';
import type { Setting } from '../../../core/machine/setting.ts';

/** How sure the answer is of its promise at a speed that it named; undefined at another. */
export const sureAt = (
  { recommended, oneStepSurer, edge }: Pick<FitAnswer, 'recommended' | 'oneStepSurer' | 'edge'>,
  { speedMmPerS, powerPct }: Pick<Setting, 'speedMmPerS' | 'powerPct'>,
): number | undefined => {
  const preferred = edge?.preferred;
  if (preferred?.powerPct === powerPct && preferred.speedMmPerS === speedMmPerS)
    return preferred.sureOfPromisePct;
  if (recommended === null || recommended.powerPct !== powerPct) return undefined;
  // At the fastest that holds the promise is the one that was asked for, whatever the rounding leaves over.
  if (recommended.speedMmPerS === speedMmPerS) return recommended.surePct;
  return oneStepSurer?.speedMmPerS === speedMmPerS ? oneStepSurer.sureOfPromisePct : undefined;
};
