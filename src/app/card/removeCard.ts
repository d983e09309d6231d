import { done, refused, type Outcome } from '../../core/problem.ts';
import type { Ports } from '../ports/ports.ts';
import { findStudy } from '../shared/findStudy.ts';

/** Removes a card with its readings. Refuses: `study-not-found`, `card-not-found`. */
export const removeCard = (
  { store, clock }: Ports,
  studyId: string,
  code: string,
): Promise<Outcome<undefined>> =>
  store.change(async (session) => {
    const found = await findStudy(session, studyId);
    if (!found.ok) return found;
    if (!found.value.study.cards.some((card) => card.code === code))
      return refused('card-not-found', { card: code });
    await session.deleteCard(studyId, code);
    await session.touch(studyId, clock.now());
    return done(undefined);
  });
