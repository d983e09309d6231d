import type { Ports } from '../../app/ports/ports.ts';
import { changeStudy } from '../../app/sheet/changeStudy.ts';
import { listStudies } from '../../app/sheet/listStudies.ts';
import { putBackStudy } from '../../app/sheet/putBackStudy.ts';
import { putOnBed } from '../../app/sheet/putOnBed.ts';
import { readStudy } from '../../app/sheet/readStudy.ts';
import { removeStudy } from '../../app/sheet/removeStudy.ts';
import { startStudy } from '../../app/sheet/startStudy.ts';
import { done } from '../../core/problem.ts';
import { api } from '../../wire/api.ts';
import type { Site } from '../site.ts';

export const studyRoutes = (site: Site, ports: Ports): void => {
  site.put(api.listStudies, async ({ query }) => {
    const listed = await listStudies(ports, query);
    if (!listed.ok) return listed;
    const { found, total } = listed.value;
    return done({ studies: found, total });
  });
  site.put(api.startStudy, ({ body }) => startStudy(ports, body));
  site.put(api.getStudy, ({ params }) => readStudy(ports, params.id));
  site.put(api.changeStudy, ({ params, body }) => changeStudy(ports, params.id, body));
  site.put(api.removeStudy, async ({ params }) => {
    const removed = await removeStudy(ports, params.id);
    return removed.ok ? done({ removed: true }) : removed;
  });
  site.put(api.putBackStudy, ({ params }) => putBackStudy(ports, params.id));
  site.put(api.putOnBed, async ({ params }) => {
    const put = await putOnBed(ports, params.id);
    return put.ok ? done({ onBed: true }) : put;
  });
};
