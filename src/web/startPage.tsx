import { QueryCache, QueryClient } from '@tanstack/react-query';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '@fontsource-variable/besley/wght.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import type { RouterProps } from 'wouter';
import { pageApi } from '../wire/pageApi.ts';
import { showUnits } from '../words/texts.ts';
import { App } from './app.tsx';
import './look/typefaces/typefaces.css';
import './look/base.css';
import { browserShelf, keepsAnything } from './state/browserShelf.ts';
import { call, CallFailed, isNotLetIn } from './state/call.ts';
import { cacheMachine } from './state/cacheMachine.ts';
import { openPageStore } from './state/pageStore.ts';
import { listenLive } from './state/live.ts';
import { startModel } from './state/model.ts';
import { startWorker } from './state/startWorker.ts';
import { newId } from './state/newId.ts';
import { sendChange } from './state/sendChange.ts';
import { loneTab, openTabs } from './state/tabs.ts';
import { keptUnits } from './state/units.ts';

/** By then the first view stands, on a slow line too. Whoever taps sooner needs the model sooner. */
const firstViewMs = 2500;

export interface PageStart {
  /** Where addresses stand; absent: in the address itself. */
  readonly places?: Pick<RouterProps, 'hook' | 'searchHook' | 'hrefs'>;
}

/** Draws the page in its place, and starts what works behind it. */
export const startPage = ({ places }: PageStart = {}): void => {
  showUnits(keptUnits());

  const tab = newId();
  // Tabs meet on the browser's shelf: where it keeps nothing, each is alone.
  const tabs = keepsAnything ? openTabs(browserShelf, tab) : loneTab;

  // The server is this computer's own or the workshop's: it is asked whatever the browser thinks of the internet.
  const cache = new QueryClient({
    queryCache: new QueryCache({
      onError: (error) => {
        if (error instanceof CallFailed && isNotLetIn(error.why)) store.notLetIn(error.why);
      },
    }),
    defaultOptions: { queries: { retry: 1, staleTime: 5_000, networkMode: 'always' } },
  });

  const store = openPageStore({
    shelf: browserShelf,
    tabs,
    tab,
    now: () => Date.now(),
    send: sendChange,
    onMachine: (machine) => cacheMachine(cache, machine),
    fetchStudy: async (id) => {
      const outcome = await call(pageApi.getStudy, { params: { id } });
      return outcome.ok ? { ok: true, value: outcome.value } : outcome;
    },
    later: (run, ms) => void setTimeout(run, ms),
  });

  // A phone that wakes, or a network that returns, is the moment to send what waited. What was under way when the network
  // went may hang for ever.
  addEventListener('online', () => store.sendNow('afresh'));
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') store.sendNow();
  });

  listenLive({ store, cache, tabs });

  const page = document.getElementById('page');
  if (page === null) throw new Error('index.html has no place for the page');
  const model = startModel(startWorker.fit);
  createRoot(page).render(
    <StrictMode>
      <App
        cache={cache}
        workshop={{ store, model }}
        {...(places === undefined ? {} : { places })}
      />
    </StrictMode>,
  );

  setTimeout(model.open, firstViewMs);
  for (const doing of ['pointerdown', 'keydown'] as const) {
    addEventListener(doing, model.open, { capture: true, once: true });
  }
};
