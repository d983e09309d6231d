import { settingTrail } from '../../app/book/settingTrail.ts';
import { takeBackChange } from '../../app/book/takeBackChange.ts';
import type { Ports } from '../../app/ports/ports.ts';
import { done } from '../../core/problem.ts';
import { trailApi } from '../../wire/trailApi.ts';
import type { Site } from '../site.ts';
import { trailSaid } from '../trailSaid.ts';

const usualLines = 25;

/** Who did what to kept settings. */
export const trailRoutes = (site: Site, ports: Ports): void => {
  site.put(trailApi.listSettingChanges, async ({ query: { limit = usualLines, ...of } }) => {
    return done(trailSaid(await settingTrail(ports, { ...of, limit })));
  });
  site.put(trailApi.takeBackSettingChange, async ({ params, author }) => {
    const made = await takeBackChange({ ...ports, ...author }, params.changeId);
    return made.ok ? done({ change: made.value }) : made;
  });
};
