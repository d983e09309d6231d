import type { ProvenSetting } from '../book/provenSetting.ts';
import type { FitAnswer } from '../cutmodel/fitAnswer.ts';
import type { Study } from '../study/study.ts';
import { alsoBy } from './alsoBy.ts';
import { answerSeen, evidenceFrom, needsAnswer } from './evidenceFrom.ts';
import type { Standing } from './standing.ts';
import { standingOf } from './standingOf.ts';

/** What was kept of a sheet last, and how it stood when it was weighed last. */
export interface KeptStanding {
  readonly entry: ProvenSetting;
  readonly standing: Standing;
}

/**
 * How a sheet stands whose cards are being read: where nothing was kept by its answer and orders, else as what was kept
 * stands, with the answer that has come since.
 */
export const standingOfSheet = (
  study: Study,
  answer: FitAnswer,
  kept: KeptStanding | undefined,
): Standing => {
  if (kept === undefined) return standingOf(evidenceFrom({ study, answer }));
  const { entry, standing } = kept;
  return needsAnswer(study, entry)
    ? alsoBy(standing, entry, answerSeen(answer, entry, study))
    : standing;
};
