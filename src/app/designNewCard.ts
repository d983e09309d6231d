import { sheetOfCard } from '../core/card/sheetOfCard.ts';
import { designCard, type DesignedCard } from '../core/card/designCard.ts';
import { done, type Outcome } from '../core/problem.ts';
import { answerToDesignBy, cardRequestFor, type CardWish } from '../core/study/cardRequestFor.ts';
import { toCutStudy } from '../core/study/toCutStudy.ts';
import { acceptMaterial } from '../core/stock/acceptMaterial.ts';
import { freeCode } from './freeCode.ts';
import { historyFor } from './gatherHistory.ts';
import type { Ports } from './ports.ts';
import { findStudy } from './readStudy.ts';
import { refuse } from './refuse.ts';

export interface CardDesigned extends DesignedCard {
  readonly revision: number;
}

/** A wish for a card of a study that is kept: it may say by an earlier card which board it is cut from. */
interface NewCardWish extends Omit<CardWish, 'code'> {
  readonly sameSheetAs?: string;
}

/**
 * Designs a card for a study and adds it, under a code that nothing else has. What earlier sheets taught says where to look.
 * Refuses: `study-not-found`, `card-not-found`, a refused material, a wish that no card can fulfil.
 */
export const designNewCard = (
  { store, clock, ids }: Ports,
  studyId: string,
  { sameSheetAs, ...wish }: NewCardWish,
): Promise<Outcome<CardDesigned>> =>
  store.change(async (session) => {
    const found = await findStudy(session, studyId);
    if (!found.ok) return found;
    const { study } = found.value;
    const { stock } = study;
    const accepted = acceptMaterial(stock);
    if (!accepted.ok) return accepted;
    const cut = toCutStudy(study);
    const before = study.cards.find(({ code }) => code === sameSheetAs);
    if (sameSheetAs !== undefined && before === undefined)
      return refuse('card-not-found', { card: sameSheetAs });
    const whole: CardWish = {
      ...(before === undefined ? boardOf(stock) : {}),
      ...wish,
      ...(before === undefined ? {} : boardOf({ ...before, sheet: sheetOfCard(before) })),
      code: await freeCode(session, ids),
    };
    const known = answerToDesignBy(cut, await historyFor(session, study));
    const designed = designCard(cardRequestFor(cut, whole, known));
    if (!designed.ok) return designed;
    await session.insertCard(studyId, designed.value.card);
    const revision = await session.touch(studyId, clock.now());
    return done({ ...designed.value, revision });
  });

const boardOf = ({ batch, sheet }: Pick<CardWish, 'batch' | 'sheet'>) => ({
  ...(batch === undefined ? {} : { batch }),
  ...(sheet === undefined ? {} : { sheet }),
});
