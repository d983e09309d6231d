import { sameValue } from '../../core/sameValue.ts';
import type { Card } from '../../core/card/card.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import type { Ports } from '../ports/ports.ts';
import { findStudy } from '../shared/findStudy.ts';

export interface CardAdded {
  readonly card: Card;
  readonly revision: number;
}

/**
 * Adds a whole card to a study: one cut elsewhere and described, or one designed where the page is. The same card sent
 * twice is stored once. Refuses: `study-not-found`, `card-code-taken`, a refused material.
 */
export const describeCard = (
  { store, clock }: Ports,
  studyId: string,
  card: Card,
): Promise<Outcome<CardAdded>> =>
  store.change(async (session) => {
    const found = await findStudy(session, studyId);
    if (!found.ok) return found;
    const { study, revision } = found.value;
    const accepted = acceptMaterial(study.stock);
    if (!accepted.ok) return accepted;
    const known = study.cards.find(({ code }) => code === card.code);
    if (known !== undefined && sameValue(known, card)) return done({ card, revision });
    if (await session.codeTaken(card.code)) return refused('card-code-taken', { card: card.code });
    await session.insertCard(studyId, card);
    return done({ card, revision: await session.touch(studyId, clock.now()) });
  });
