import type { Card } from '../../core/card/card.ts';
import { omit } from '../../core/omit.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import type { Ports } from '../ports/ports.ts';
import { findStudy } from '../shared/findStudy.ts';
import type { CardAdded } from './describeCard.ts';

/**
 * Says the note of a card anew, and nothing else of it: whoever reads a card may write what they saw. Null, or nothing but
 * blanks, takes it away. Refuses: `study-not-found`, `card-not-found`.
 */
export const noteCard = (
  { store, clock }: Ports,
  studyId: string,
  code: string,
  note: string | null,
): Promise<Outcome<CardAdded>> =>
  store.change(async (session) => {
    const found = await findStudy(session, studyId);
    if (!found.ok) return found;
    const before = found.value.study.cards.find((card) => card.code === code);
    if (before === undefined) return refused('card-not-found', { card: code });
    const bare = omit(before, 'note');
    const card: Card = note === null || note.trim() === '' ? bare : { ...bare, note };
    await session.replaceCard(studyId, card);
    return done({ card, revision: await session.touch(studyId, clock.now()) });
  });
