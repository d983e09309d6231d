import type { CutStudy } from '../core/cutmodel/cutStudy.ts';
import type { NextCardAnswer } from '../core/cutmodel/fitAnswer.ts';
import { proposeNextCard as propose } from '../core/cutmodel/nextCard.ts';
import { done, type Outcome } from '../core/problem.ts';
import { toCutStudy } from '../core/study/toCutStudy.ts';
import type { Ports } from './ports.ts';
import { readStudy } from './readStudy.ts';

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
): NextCardAnswer => propose(study, { cellsWanted, settingsAtMost });

/** The card that would teach most about a study, or that no card is worth it. Refuses: `study-not-found`. */
export const proposeNextCard = async (
  ports: Pick<Ports, 'store'>,
  studyId: string,
  wish: NextCardWish,
): Promise<Outcome<NextCardAnswer>> => {
  const found = await readStudy(ports, studyId);
  return found.ok ? done(nextCardFor(toCutStudy(found.value.study), wish)) : found;
};
