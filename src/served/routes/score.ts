import { done } from '../../core/problem.ts';
import { scoreApi } from '../../wire/score.ts';
import { FileAnswer } from '../fileAnswer.ts';
import type { Site } from '../site.ts';
import type { ServedPorts } from '../servedPorts.ts';

/** Whether promises hold in this workshop. */
export const scoreRoutes = (site: Site, ports: ServedPorts): void => {
  site.put(scoreApi.scorePromises, async () => {
    const { scoreWorkshop } = await import('../../app/workshop/scorePromises.ts');
    return done(await scoreWorkshop(ports));
  });
  site.put(scoreApi.exportCounts, async () => {
    const { countsPromised } = await import('../../app/workshop/scorePromises.ts');
    const { countsFile } = await import('../../formats/countsFile.ts');
    const body = `${JSON.stringify(countsFile(await countsPromised(ports)), null, 2)}\n`;
    return done(
      new FileAnswer({ contentType: 'application/json', body, name: 'throughcut-counts.json' }),
    );
  });
};
