import type { Card } from '../../core/card/card.ts';
import { omit } from '../../core/omit.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { readCard } from '../../core/reading/readCard.ts';
import { sameValue } from '../../core/sameValue.ts';
import type { Study } from '../../core/study/study.ts';
import type { CardAdded } from './describeCard.ts';
import type { Ports } from '../ports/ports.ts';
import { findStudy } from '../shared/findStudy.ts';

/**
 * Changes a card that is there. A designed card may change until someone has read it: after that its words are cut
 * into wood, and a wrong setting is corrected as cut. A described card may always change, but no cell that was read
 * may vanish. Its note is nobody's reading, and may always change. Refuses: `study-not-found`, `card-not-found`, `card-code-changed`, `card-already-read`,
 * `read-cell-would-vanish`.
 */
export const replaceCard = (
  { store, clock }: Ports,
  studyId: string,
  code: string,
  card: Card,
): Promise<Outcome<CardAdded>> =>
  store.change(async (session) => {
    if (card.code !== code) return refused('card-code-changed', { card: code, other: card.code });
    const found = await findStudy(session, studyId);
    if (!found.ok) return found;
    const allowed = mayReplace(found.value.study, card);
    if (!allowed.ok) return allowed;
    await session.replaceCard(studyId, card);
    return done({ card, revision: await session.touch(studyId, clock.now()) });
  });

const mayReplace = (study: Study, card: Card): Outcome<undefined> => {
  const before = study.cards.find(({ code }) => code === card.code);
  if (before === undefined) return refused('card-not-found', { card: card.code });
  if (sameValue(omit(before, 'note'), omit(card, 'note'))) return done(undefined);
  const read = readCard(before, study.events).cells.filter(
    ({ reading, corrected }) => reading.kind !== 'unread' || corrected,
  );
  if (read.length > 0 && before.origin === 'designed')
    return refused('card-already-read', { card: card.code });
  const kept = new Set(card.cells.map(({ id }) => id));
  const vanishing = read.find(({ id }) => !kept.has(id));
  return vanishing === undefined
    ? done(undefined)
    : refused('read-cell-would-vanish', { card: card.code, cell: vanishing.id });
};
