import type { FastifyInstance } from 'fastify';
import { done } from '../../core/problem.ts';
import { scoreApi } from '../../wire/score.ts';
import { on } from '../on.ts';
import type { ServedPorts } from '../servedPorts.ts';

/** Whether promises hold in this workshop. */
export const scoreRoutes = (app: FastifyInstance, ports: ServedPorts): void => {
  on(app, scoreApi.scorePromises, async () => {
    const { scoreWorkshop } = await import('../../app/workshop/scorePromises.ts');
    return done(await scoreWorkshop(ports));
  });
  on(app, scoreApi.exportCounts, async ({ reply }) => {
    const { countsPromised } = await import('../../app/workshop/scorePromises.ts');
    const { countsFile } = await import('../../formats/countsFile.ts');
    reply
      .type('application/json')
      .header('content-disposition', 'attachment; filename="throughcut-counts.json"')
      .send(`${JSON.stringify(countsFile(await countsPromised(ports)), null, 2)}\n`);
    return done(undefined);
  });
};
