import type { FastifyInstance } from 'fastify';
import { keepSetting } from '../../app/keepSetting.ts';
import type { Ports } from '../../app/ports.ts';
import { readEntry } from '../../app/readEntry.ts';
import { removeEntry } from '../../app/removeEntry.ts';
import { searchBook } from '../../app/searchBook.ts';
import { tallyEntry } from '../../app/tallyEntry.ts';
import { done } from '../../core/problem.ts';
import { api } from '../../wire/api.ts';
import { on } from '../on.ts';

export const bookRoutes = (app: FastifyInstance, ports: Ports): void => {
  on(app, api.searchBook, async ({ query }) =>
    done({ entries: await searchBook(ports, query.text ?? '') }),
  );
  on(app, api.getEntry, ({ params }) => readEntry(ports, params.id));
  on(app, api.keepSetting, ({ body }) => keepSetting(ports, body));
  on(app, api.removeEntry, async ({ params }) => {
    const removed = await removeEntry(ports, params.id);
    return removed.ok ? done({ removed: true }) : removed;
  });
  on(app, api.tallyEntry, ({ params, body }) => tallyEntry(ports, params.id, body));
};
