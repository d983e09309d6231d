import type { Outcome } from '../../core/problem.ts';
import { toCutStudy } from '../../core/study/toCutStudy.ts';
import { readWithHistory, type EarlierSheetsWish } from '../shared/history.ts';
import type { NextCardProposed, NextCardWish } from '../sums/nextCardFor.ts';
import type { AskingPorts } from '../ports/ports.ts';

/**
 * The card that would teach most about a study, with what earlier sheets taught, or that no card is worth it.
 * Refuses: `study-not-found`, what `acceptMaterial` and `Model` refuse.
 */
export const proposeNextCard = async (
  { store, model }: Pick<AskingPorts, 'store' | 'model'>,
  studyId: string,
  { cellsWanted, settingsAtMost, ...history }: NextCardWish & EarlierSheetsWish,
): Promise<Outcome<NextCardProposed>> => {
  const found = await readWithHistory({ store }, studyId, history);
  if (!found.ok) return found;
  const { study, earlier } = found.value;
  const wish = {
    ...(cellsWanted === undefined ? {} : { cellsWanted }),
    ...(settingsAtMost === undefined ? {} : { settingsAtMost }),
  };
  return model.ask('nextCard', { study: toCutStudy(study), wish, earlier }, studyId);
};
