import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { launchBrowser } from '../../bench/launchBrowser.ts';
import { visit, type OpenedPage, type VisitOptions } from './page.ts';
import { runServer, type RunningServer } from './server.ts';

/** A browser, and a server on an empty store. */
export interface Workshop {
  readonly base: string;
  /** Folder of its store. */
  readonly data: string;
  /** A fresh visitor: empty storage, no cookies. */
  readonly visit: (options: VisitOptions) => Promise<OpenedPage>;
  /** Ends the server without warning, as a power cut would. */
  readonly killServer: () => Promise<void>;
  readonly startServer: () => Promise<void>;
}

/** Opens a workshop for the suite that calls this, and closes it after its last test. `args`: for the server. */
export const openWorkshop = (args: readonly string[] = []): Workshop => {
  let browser: Browser | undefined;
  let server: RunningServer | undefined;
  beforeAll(async () => {
    browser = await launchBrowser();
    server = await runServer(args);
  });
  afterAll(async () => {
    await browser?.close();
    await server?.remove();
  });
  return {
    get base() {
      return opened(server).base;
    },
    get data() {
      return opened(server).data;
    },
    visit: (options) => visit(opened(browser), options),
    killServer: () => opened(server).kill(),
    startServer: () => opened(server).start(),
  };
};

const opened = <T>(part: T | undefined): T => {
  if (part === undefined) throw new Error('The workshop opens with the first test of its suite.');
  return part;
};
