import type { ProvenSetting } from '../../core/book/provenSetting.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { sameMaterialAs } from '../../core/stock/sameMaterial.ts';
import type { Ports } from '../ports/ports.ts';

/** Older ones stand in the book. */
const mostAlike = 200;

/**
 * The settings kept of a sheet's material on its machine, the last kept first: among them is the one whose strip lies on
 * the sheet. Refuses: `study-not-found`.
 */
export const keptLike = (
  { store }: Pick<Ports, 'store'>,
  studyId: string,
): Promise<Outcome<readonly ProvenSetting[]>> =>
  store.read(async (session) => {
    const sheet = await session.sheet(studyId);
    if (sheet === undefined) return refused('study-not-found', { id: studyId });
    const { isExample, machineId, stock } = sheet;
    const isSameMaterial = sameMaterialAs(stock.material);
    return done(
      await session.entriesOfKind({
        isExample,
        machine: { id: machineId },
        isSameMaterial,
        limit: mostAlike,
      }),
    );
  });
