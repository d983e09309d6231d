import type { Study } from '../../core/study/study.ts';
import type { Ports } from '../ports/ports.ts';

/** Every sheet that has cards, with all that was read of them. What cannot be read is left out. */
export const readAllCards = ({ store }: Pick<Ports, 'store'>): Promise<readonly Study[]> =>
  store.readLong(async (session) => {
    const studies: Study[] = [];
    for (const { id, cardCodes } of await session.summaries()) {
      if (cardCodes.length === 0) continue;
      const found = await session.studyAsReadable(id);
      if (found !== undefined) studies.push(found.study);
    }
    return studies;
  });
