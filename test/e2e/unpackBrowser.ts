import { bundledChromium } from '../../bench/launchBrowser.ts';

/** Once, before the suites run side by side: two of them must not unpack the browser over each other. */
export const setup = async (): Promise<void> => {
  if (process.env['THROUGHCUT_CHROMIUM'] === undefined) await bundledChromium();
};
