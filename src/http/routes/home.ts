import type { FastifyInstance } from 'fastify';
import { home, type Home } from '../../app/home.ts';
import type { Ports } from '../../app/ports.ts';
import { removeExample } from '../../app/removeExample.ts';
import { done } from '../../core/problem.ts';
import { judgeMaterial } from '../../core/stock/judgeMaterial.ts';
import { problemInWords } from '../../words/words.ts';
import { api, type ReplyOf } from '../../wire/api.ts';
import { on } from '../on.ts';

/** What the first screen and its doors need. */
export const homeRoutes = (app: FastifyInstance, ports: Ports, version: string): void => {
  on(app, api.health, () => Promise.resolve(done({ status: 'ok', version })));
  on(app, api.home, async () => done(inReply(await home(ports))));
  on(app, api.openExample, async () => {
    const { openExample } = await import('../../app/openExample.ts');
    const opened = await openExample(ports);
    return opened.ok ? done(inReply(opened.value)) : opened;
  });
  on(app, api.removeExample, async () => {
    const removed = await removeExample(ports);
    return removed.ok ? done(inReply(removed.value)) : removed;
  });
  on(app, api.judgeMaterial, ({ query }) => {
    const judged = judgeMaterial(query.text);
    const { decision, material } = judged;
    return Promise.resolve(
      done({
        decision,
        ...(material === undefined ? {} : { material: material.id }),
        ...('problem' in judged ? { said: problemInWords(judged.problem) } : {}),
        ...('entry' in judged
          ? { hazards: judged.entry.hazards, sources: judged.entry.sources }
          : {}),
      }),
    );
  });
};

const inReply = ({ unreadable, ...rest }: Home): ReplyOf<typeof api.home> => ({
  ...rest,
  ...(unreadable === undefined
    ? {}
    : { unreadable: unreadable.map((problem) => problemInWords(problem)) }),
});
