import type { Card } from '../../core/card/card.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import type { CardAt } from '../ports/pictures.ts';
import type { ReadSession } from '../ports/ports.ts';

/** One card, inside a session, without what was said of it. Refuses: `study-not-found`, `card-not-found`. */
export const findCard = async (
  session: ReadSession,
  { studyId, code }: CardAt,
): Promise<Outcome<Card>> => {
  const found = await session.cardsOf(studyId);
  if (found === undefined) return refused('study-not-found', { id: studyId });
  const card = found.cards.find((one) => one.code === code);
  return card === undefined ? refused('card-not-found', { card: code }) : done(card);
};
