import type { CutStudy } from '../core/cutmodel/cutStudy.ts';
import type { NextCardAnswer } from '../core/cutmodel/fitAnswer.ts';
import { done, type Outcome } from '../core/problem.ts';
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

/** The card that would teach most about what is known, by default one of 12 cells and 6 settings. */
export const nextCardFor = (
  study: CutStudy,
  { cellsWanted = 12, settingsAtMost = 6 }: NextCardWish,
  earlier: readonly EarlierSheet[] = [],
): NextCardAnswer => nextCardWithEarlier(study, { cellsWanted, settingsAtMost }, earlier);

/**
 * The card that would teach most about a study, with what earlier sheets taught, or that no card is worth it.
 * Refuses: `study-not-found`.
 */
export const proposeNextCard = async (
  ports: Pick<Ports, 'store'>,
  studyId: string,
  wish: NextCardWish & EarlierSheetsWish,
): Promise<Outcome<NextCardAnswer>> => {
  const found = await readWithHistory(ports, studyId, wish);
  if (!found.ok) return found;
  const { study, earlier } = found.value;
  return done(nextCardFor(toCutStudy(study), wish, earlier));
};
