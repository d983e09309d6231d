import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { launchBrowser } from '../launchBrowser.ts';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { serve } from './program.ts';

/** How soon the first shape of the sample card stands on a slow line and a slow processor. */
export const firstViewPart: NightPart = {
  name: 'first-view',
  about:
    'the first view at 2 Mbit/s with a processor four times slower, nothing kept by the browser',
  run: () => seeFirst({ visits: 7 }),
};

/** 2 Mbit/s, there and back in 40 ms; and what a cheap phone takes where a desk takes one. */
const line = { bytesPerS: 250_000, latencyMs: 40 } as const;
const processorTimesSlower = 4;

/** So many first visits, and what they came to. */
export async function* seeFirst({ visits }: { readonly visits: number }): AsyncGenerator<Figure> {
  const data = mkdtempSync(join(tmpdir(), 'throughcut-first-'));
  const server = await serve(data);
  const browser = await launchBrowser();
  try {
    const seen: Seen[] = [];
    // The first visit also starts the browser's own parts: it is not counted.
    for (let i = 0; i <= visits; i += 1) seen.push(await visitOnce(browser, server.base));
    const counted = seen.slice(1);
    const middle = (of: (one: Seen) => number): number =>
      counted.map(of).sort((a, b) => a - b)[counted.length >> 1] ?? Number.NaN;
    yield {
      what: 'the first shape stands after, at the median',
      value: Math.round(middle(({ shapeMs }) => shapeMs)),
      unit: 'ms',
      atMost: 2000,
    };
    const kB = (of: (one: Seen) => number): number => Math.round(middle(of) / 100) / 10;
    yield {
      what: 'page, scripts and styles over the line until then, as compressed',
      value: kB(({ bytes }) => bytes),
      unit: 'kB',
      atMost: 150,
    };
    yield {
      what: 'typefaces and all else over the line until then',
      value: kB(({ otherBytes }) => otherBytes),
      unit: 'kB',
    };
    yield { what: 'requests until then', value: middle(({ requests }) => requests), atMost: 15 };
  } finally {
    await browser.close();
    await server.kill();
    rmSync(data, { recursive: true, force: true });
  }
}

interface Seen {
  readonly shapeMs: number;
  /** Of the page, its scripts and its styles. */
  readonly bytes: number;
  readonly otherBytes: number;
  readonly requests: number;
}

const visitOnce = async (browser: Browser, base: string): Promise<Seen> => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  const devtools = await context.newCDPSession(page);
  await devtools.send('Network.enable');
  await devtools.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: line.latencyMs,
    downloadThroughput: line.bytesPerS,
    uploadThroughput: line.bytesPerS,
  });
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: processorTimesSlower });
  let [bytes, otherBytes, requests] = [0, 0, 0];
  const ofThePage = new Set<string>();
  devtools.on('Network.requestWillBeSent', ({ requestId, type = '' }) => {
    requests += 1;
    if (['Document', 'Script', 'Stylesheet'].includes(type)) ofThePage.add(requestId);
  });
  devtools.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    if (ofThePage.has(requestId)) bytes += encodedDataLength;
    else otherBytes += encodedDataLength;
  });
  await page.goto(base, { waitUntil: 'commit' });
  // By the page's own clock, from when it was asked for: what asks from outside comes late on a slow processor.
  const shapeMs = await page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        const look = (): void => {
          if (document.querySelector('[data-cell]') === null) requestAnimationFrame(look);
          else requestAnimationFrame(() => resolve(performance.now()));
        };
        look();
      }),
  );
  await context.close();
  return { shapeMs, bytes, otherBytes, requests };
};
