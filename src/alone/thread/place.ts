/// <reference lib="webworker" />
import { watchedStore } from '../../app/ports/watchedStore.ts';
import type { AskingPorts, Ports } from '../../app/ports/ports.ts';
import { done } from '../../core/problem.ts';
import { putRoutes } from '../../served/putRoutes.ts';
import type { ServedPorts } from '../../served/servedPorts.ts';
import { openBrowserStore } from '../../store/browser/browserStore.ts';
import { newCode, newId } from '../../web/state/newId.ts';
import { api } from '../../wire/api.ts';
import { canvasPictures } from './canvasPictures.ts';
import type { FromPlace, PlaceReply, ToPlace } from './messages.ts';
import { noPrinter } from './noPrinter.ts';
import { thrownReply } from './refusalReply.ts';
import { openSite, type OpenSite } from './openSite.ts';
import { sumsOfPage } from './sumsOfPage.ts';

declare const self: DedicatedWorkerGlobalScope;
declare const __VERSION__: string;

/** Under which name this browser keeps the workshop. */
const storeName = 'throughcut-workshop';

const say = (message: FromPlace): void => self.postMessage(message);
const clock = { now: () => new Date().toISOString() };
const sums = sumsOfPage(say);

const open = async (): Promise<OpenSite> => {
  const kept = await openBrowserStore({ name: storeName, openedAt: clock.now(), newId });
  const tell: Parameters<typeof kept.hear>[0] = (change) => say({ kind: 'news', change });
  kept.hear(tell);
  const ports: Ports = { store: watchedStore(kept, tell), clock, ids: { newId, newCode } };
  const until = (gone: AbortSignal): AskingPorts => ({ ...ports, model: sums.until(gone) });
  const served: ServedPorts = { ...ports, until };
  const site = openSite();
  site.put(api.pairing, () => Promise.resolve(done({ lan: false, desk: true, letIn: true })));
  putRoutes(site, served, {
    version: __VERSION__,
    printer: noPrinter,
    pictures: canvasPictures,
  });
  return site;
};

/** Opened again by the next request where it could not be: what was in the way may have gone. */
let opening: Promise<OpenSite> | undefined;
const site = async (): Promise<OpenSite> => {
  opening ??= open();
  try {
    return await opening;
  } catch (thrown) {
    opening = undefined;
    throw thrown;
  }
};

const asking = new Map<number, AbortController>();

const answer = async ({ id, asked }: ToPlace & { readonly kind: 'ask' }): Promise<PlaceReply> => {
  const gone = new AbortController();
  asking.set(id, gone);
  try {
    return await (await site()).ask(asked, gone.signal);
  } catch (thrown) {
    return thrownReply(thrown);
  } finally {
    asking.delete(id);
  }
};

self.addEventListener('message', ({ data }: MessageEvent<ToPlace>) => {
  switch (data.kind) {
    case 'ask':
      void answer(data).then((reply) => say({ kind: 'reply', id: data.id, reply }));
      return;
    case 'gone':
      asking.get(data.id)?.abort();
      return;
    case 'sum-made':
      sums.made(data.id, data.outcome);
  }
});
