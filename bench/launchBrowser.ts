import { chromium as playwright, type Browser } from 'playwright-core';

/** The Chromium that ships inside an npm package, or the one named by THROUGHCUT_CHROMIUM, and how it is started. */
export const chromiumToRun = async () => ({
  executablePath: process.env['THROUGHCUT_CHROMIUM'] ?? (await bundledChromium()),
  // Never the package's own arguments: they hide a second context and blind the content policy.
  args: ['--no-sandbox', '--font-render-hinting=none'],
  env: { ...process.env, LANG: 'en_US.UTF-8' },
});

/** Opens it. */
export const launchBrowser = async (): Promise<Browser> => playwright.launch(await chromiumToRun());

/** Unpacks the browser where that has not been done yet, and says where it lies. */
export const bundledChromium = async (): Promise<string> => {
  // Makes the package unpack the shared libraries that a bare machine lacks; it is read at import time.
  process.env['AWS_EXECUTION_ENV'] = 'AWS_Lambda_nodejs20.x';
  const { default: chromium } = await import('@sparticuz/chromium');
  try {
    return await chromium.executablePath();
  } finally {
    delete process.env['AWS_EXECUTION_ENV'];
  }
};
