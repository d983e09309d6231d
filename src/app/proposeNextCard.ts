import type { CutStudy } from '../core/cutmodel/cutStudy.ts';
import type { NextCardAnswer } from '../core/cutmodel/fitAnswer.ts';
import { done, type Outcome, type Problem } from '../core/problem.ts';
import { acceptMaterial } from '../core/stock/acceptMaterial.ts';
import { nextCardWithEarlier } from '../core/study/answerWithEarlier.ts';
import type { EarlierSheet } from '../core/study/earlierSheet.ts';
import { toCutStudy } from '../core/study/toCutStudy.ts';
import { readWithHistory, type EarlierSheetsWish } from './gatherHistory.ts';
import type { Ports } from './ports.ts';

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
 * `acceptMaterial` refuses.
 */
export const nextCardFor = (
  study: CutStudy,
  { cellsWanted = 12, settingsAtMost = 6 }: NextCardWish,
  earlier: readonly EarlierSheet[] = [],
): Outcome<NextCardProposed> => {
  const accepted = acceptMaterial(study.stock);
  if (!accepted.ok) return accepted;
  const next = nextCardWithEarlier(study, { cellsWanted, settingsAtMost }, earlier);
  return done({ ...next, warnings: accepted.value });
};

/**
 * The card that would teach most about a study, with what earlier sheets taught, or that no card is worth it.
 * Refuses: `study-not-found`, what `acceptMaterial` refuses.
 */
export const proposeNextCard = async (
  ports: Pick<Ports, 'store'>,
  studyId: string,
  wish: NextCardWish & EarlierSheetsWish,
): Promise<Outcome<NextCardProposed>> => {
  const found = await readWithHistory(ports, studyId, wish);
  if (!found.ok) return found;
  const { study, earlier } = found.value;
  return nextCardFor(toCutStudy(study), wish, earlier);
};
