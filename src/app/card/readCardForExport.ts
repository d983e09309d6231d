import type { Card } from '../../core/card/card.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import type { Study } from '../../core/study/study.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import type { Ports } from '../ports/ports.ts';
import { findStudy } from '../shared/findStudy.ts';

/**
 * A card with its study, to be made into a file for the machine. Refuses: `study-not-found`, `card-not-found`, a
 * refused material.
 */
export const readCardForExport = async (
  { store }: Pick<Ports, 'store'>,
  studyId: string,
  code: string,
): Promise<Outcome<{ readonly study: Study; readonly card: Card }>> => {
  const found = await store.read((session) => findStudy(session, studyId));
  if (!found.ok) return found;
  const { study } = found.value;
  const accepted = acceptMaterial(study.stock);
  if (!accepted.ok) return accepted;
  const card = study.cards.find((one) => one.code === code);
  return card === undefined ? refused('card-not-found', { card: code }) : done({ study, card });
};
