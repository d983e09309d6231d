import { boardOf, boardOfCard } from '../../core/card/boardOf.ts';
import { designCard, type DesignedCard } from '../../core/card/designCard.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { cardRequestKnowing, type CardWish } from '../../core/study/cardRequestKnowing.ts';
import { toCutStudy } from '../../core/study/toCutStudy.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import { freeCode } from '../shared/freeCode.ts';
import { readWithHistory } from '../shared/history.ts';
import type { AskingPorts } from '../ports/ports.ts';

export interface CardDesigned extends DesignedCard {
  readonly revision: number;
}

/** A wish for a card of a study that is kept: it may say by an earlier card which board it is cut from. */
interface NewCardWish extends Omit<CardWish, 'code'> {
  readonly sameSheetAs?: string;
}

/**
 * Designs a card for a study and adds it, under a code that nothing else has. What earlier sheets taught says where to look.
 * Refuses: `study-not-found`, `card-not-found`, a refused material, a wish that no card can fulfil, what `Model` refuses.
 */
export const designNewCard = async (
  { store, clock, ids, model }: AskingPorts,
  studyId: string,
  { sameSheetAs, ...wish }: NewCardWish,
): Promise<Outcome<CardDesigned>> => {
  const read = await readWithHistory({ store }, studyId, {});
  if (!read.ok) return read;
  const { study, earlier } = read.value;
  const { stock } = study;
  const accepted = acceptMaterial(stock);
  if (!accepted.ok) return accepted;
  const cut = toCutStudy(study);
  const before = study.cards.find(({ code }) => code === sameSheetAs);
  if (sameSheetAs !== undefined && before === undefined)
    return refused('card-not-found', { card: sameSheetAs });
  const board = {
    ...(before === undefined ? boardOf(stock) : {}),
    ...wish,
    ...(before === undefined ? {} : boardOfCard(before)),
  };
  const known = await model.ask('answerToDesignBy', { cut, earlier }, studyId);
  if (!known.ok) return known;
  return store.change(async (session) => {
    if ((await session.cardsOf(studyId)) === undefined)
      return refused('study-not-found', { id: studyId });
    const whole: CardWish = { ...board, code: await freeCode(session, ids) };
    // Given even where nothing is known: else it would be worked out here.
    const designed = designCard(cardRequestKnowing(cut, whole, known.value));
    if (!designed.ok) return designed;
    await session.insertCard(studyId, designed.value.card);
    const revision = await session.touch(studyId, clock.now());
    return done({ ...designed.value, revision });
  });
};
