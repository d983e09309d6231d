import type { Study } from '../core/study/study.ts';
import type { ExportFile } from '../formats/exportFile.ts';
import type { Ports } from './ports.ts';

/** Everything that the workshop has, in one file. The invented example stays behind. */
export const exportAll = ({ store, clock }: Pick<Ports, 'store' | 'clock'>): Promise<ExportFile> =>
  store.read(async (session) => {
    const studies: Study[] = [];
    for (const { id, isExample } of await session.summaries()) {
      const stored = isExample ? undefined : await session.study(id);
      if (stored !== undefined) studies.push(stored.study);
    }
    const entries = await session.entries();
    return {
      kind: 'throughcut-export',
      version: 1,
      exportedAt: clock.now(),
      studies,
      book: entries.filter(({ isExample }) => !isExample),
      tallies: await session.looseTallies(),
    };
  });
