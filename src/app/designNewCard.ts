import { designCard, type DesignedCard } from '../core/card/designCard.ts';
import { done, type Outcome } from '../core/problem.ts';
import { answerToDesignBy, cardRequestFor, type CardWish } from '../core/study/cardRequestFor.ts';
import { toCutStudy } from '../core/study/toCutStudy.ts';
import { acceptMaterial } from './acceptMaterial.ts';
import { freeCode } from './freeCode.ts';
import { historyFor } from './gatherHistory.ts';
import type { Ports } from './ports.ts';
import { findStudy } from './readStudy.ts';

export interface CardDesigned extends DesignedCard {
  readonly revision: number;
}

/**
 * Designs a card for a study and adds it, under a code that nothing else has. What earlier sheets taught says where to look. Refuses: `study-not-found`, a refused
 * material, a wish that no card can fulfil.
 */
export const designNewCard = (
  { store, clock, ids }: Ports,
  studyId: string,
  wish: Omit<CardWish, 'code'>,
): Promise<Outcome<CardDesigned>> =>
  store.change(async (session) => {
    const found = await findStudy(session, studyId);
    if (!found.ok) return found;
    const { study } = found.value;
    const { stock } = study;
    const accepted = acceptMaterial(stock.material);
    if (!accepted.ok) return accepted;
    const cut = toCutStudy(study);
    const whole: CardWish = {
      ...(stock.batch === undefined ? {} : { batch: stock.batch }),
      ...(stock.sheet === undefined ? {} : { sheet: stock.sheet }),
      ...wish,
      code: await freeCode(session, ids),
    };
    const known = answerToDesignBy(cut, await historyFor(session, study));
    const designed = designCard(cardRequestFor(cut, whole, known));
    if (!designed.ok) return designed;
    await session.insertCard(studyId, designed.value.card);
    const revision = await session.touch(studyId, clock.now());
    return done({ ...designed.value, revision });
  });
