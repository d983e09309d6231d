import { done, type Outcome } from '../core/problem.ts';
import type { Habit } from '../core/reading/tally.ts';
import { acceptMaterial } from '../core/stock/acceptMaterial.ts';
import type { Ports } from './ports.ts';
import { findStudy } from './readStudy.ts';
import type { StoredStudy, StudyHead } from './stored.ts';

/** What to replace, each whole. `habit: null` takes it away. */
export type StudyChange = Partial<Omit<StudyHead, 'habit'>> & { readonly habit?: Habit | null };

/** Replaces parts of what a study says of its sheet, machine and wishes. Refuses: `study-not-found`, a refused material. */
export const changeStudy = (
  { store, clock }: Ports,
  id: string,
  change: StudyChange,
): Promise<Outcome<StoredStudy>> =>
  store.change(async (session) => {
    if (change.stock !== undefined) {
      const accepted = acceptMaterial(change.stock);
      if (!accepted.ok) return accepted;
    }
    const found = await findStudy(session, id);
    if (!found.ok) return found;
    const { habit, ...replaced } = change;
    const { habit: habitBefore, ...before } = found.value.study;
    const habitNow = habit === undefined ? habitBefore : (habit ?? undefined);
    const study = {
      ...before,
      ...replaced,
      ...(habitNow === undefined ? {} : { habit: habitNow }),
    };
    const touchedAt = clock.now();
    await session.replaceHead(id, study);
    return done({ study, revision: await session.touch(id, touchedAt), touchedAt });
  });
