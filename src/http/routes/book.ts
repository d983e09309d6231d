import type { FastifyInstance } from 'fastify';
import type { Ports } from '../../app/ports.ts';
import { done } from '../../core/problem.ts';
import { api } from '../../wire/api.ts';
import { on } from '../on.ts';

/** The verbs here load the distributions, or the cut model, when they are first asked: the server starts without. */
export const bookRoutes = (app: FastifyInstance, ports: Ports): void => {
  on(app, api.searchBook, async ({ query }) => {
    const { searchBook } = await import('../../app/searchBook.ts');
    return done({ entries: await searchBook(ports, query.text ?? '') });
  });
  on(app, api.getEntry, async ({ params }) => {
    const { readEntry } = await import('../../app/readEntry.ts');
    return readEntry(ports, params.id);
  });
  on(app, api.keepSetting, async ({ body }) => {
    const { keepSetting } = await import('../../app/keepSetting.ts');
    return keepSetting(ports, body);
  });
  on(app, api.removeEntry, async ({ params }) => {
    const { removeEntry } = await import('../../app/removeEntry.ts');
    const removed = await removeEntry(ports, params.id);
    return removed.ok ? done({ removed: true }) : removed;
  });
  on(app, api.tallyEntry, async ({ params, body }) => {
    const { tallyEntry } = await import('../../app/tallyEntry.ts');
    return tallyEntry(ports, params.id, body);
  });
};
