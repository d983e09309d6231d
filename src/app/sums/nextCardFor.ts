import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { NextCardAnswer } from '../../core/cutmodel/fitAnswer.ts';
import { nextCardFrom } from '../../core/cutmodel/nextCard.ts';
import { done, type Outcome, type Problem } from '../../core/problem.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import { fitWithEarlier } from '../../core/study/answerWithEarlier.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import { tooStrongAt } from '../../core/study/settingHeldBack.ts';

export interface NextCardWish {
  /** Absent: 12. */
  readonly cellsWanted?: number;
  /** Absent: 6. */
  readonly settingsAtMost?: number;
}

/** A next card, with what is to be said of what it is cut from. */
export interface NextCardProposed extends NextCardAnswer {
  readonly warnings: readonly Problem[];
}

/**
 * The card that would teach most about what is known, by default one of 12 cells and 6 settings. Refuses: what
 * `acceptMaterial` refuses, `card-machine-too-strong`.
 */
export const nextCardFor = (
  study: CutStudy,
  { cellsWanted = 12, settingsAtMost = 6 }: NextCardWish,
  earlier: readonly EarlierSheet[] = [],
): Outcome<NextCardProposed> => {
  const accepted = acceptMaterial(study.stock);
  if (!accepted.ok) return accepted;
  const fitted = fitWithEarlier(study, earlier);
  const next = nextCardFrom(fitted, { cellsWanted, settingsAtMost });
  const problem = tooStrongAt(fitted, Math.min(...next.cells.map(({ powerPct }) => powerPct)));
  if (problem !== undefined) return { ok: false, problem };
  return done({ ...next, warnings: accepted.value });
};
