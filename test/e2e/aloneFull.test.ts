import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium, type BrowserContext, type Page } from 'playwright-core';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { chromiumToRun } from '../../bench/launchBrowser.ts';
import { cellsOn, desk, ownSample } from './page.ts';

const file = pathToFileURL(join(import.meta.dirname, '../../build/alone/throughcut.html')).href;

const mount = (at: string): void =>
  void execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=40m', 'tmpfs', at], { stdio: 'ignore' });
const unmount = (at: string): void => void execFileSync('umount', [at], { stdio: 'ignore' });
const canMount = (): boolean => {
  const at = mkdtempSync(join(tmpdir(), 'throughcut-mount-'));
  try {
    mount(at);
    unmount(at);
    return true;
  } catch {
    return false;
  } finally {
    rmSync(at, { recursive: true });
  }
};

let disk: string;
let context: BrowserContext;
beforeEach(async () => {
  disk = mkdtempSync(join(tmpdir(), 'throughcut-small-'));
  mount(disk);
  context = await chromium.launchPersistentContext(join(disk, 'profile'), {
    ...(await chromiumToRun()),
    viewport: desk,
  });
});
afterEach(async () => {
  await context.close();
  unmount(disk);
  rmSync(disk, { recursive: true });
});

/** Fills what the browser gives this address, to the last few kB. */
const fill = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const request = indexedDB.open('filler', 1);
      request.onupgradeneeded = () => request.result.createObjectStore('bytes');
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(new Error('no filler'));
    });
    const put = (key: number, size: number): Promise<boolean> =>
      new Promise((resolve) => {
        const bytes = new Uint8Array(size);
        for (let at = 0; at < size; at += 65_536)
          crypto.getRandomValues(bytes.subarray(at, Math.min(size, at + 65_536)));
        const work = database.transaction('bytes', 'readwrite');
        work.objectStore('bytes').put(bytes, key);
        work.oncomplete = () => resolve(true);
        work.onabort = () => resolve(false);
      });
    let key = 0;
    for (const size of [2_000_000, 200_000, 20_000, 2_000, 200])
      while (await put(key, size)) key += 1;
    database.close();
  });

const empty = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const request = indexedDB.deleteDatabase('filler');
        request.onsuccess = () => resolve();
        request.onerror = () => reject(new Error('filler stays'));
      }),
  );

it.skipIf(!canMount())(
  'a page that works alone says that its browser has no more room, keeps what is tapped, and stores it when there is room',
  async () => {
    const page = await context.newPage();
    await page.goto(file);
    const [first, second] = await cellsOn(page);
    await page.click(`[data-cell="${first?.id ?? ''}"]`);
    await ownSample(page);
    await page.getByText('All saved').waitFor({ state: 'attached' });
    await fill(page);
    await page.click(`[data-cell="${second?.id ?? ''}"]`);
    await page.getByText('This browser has no more room').first().waitFor();
    await empty(page);
    await page.getByText('All saved').waitFor({ state: 'attached', timeout: 60_000 });
    await page.reload();
    await page.getByText('2 of 12 shapes read').waitFor();
    expect(page.url()).toContain('throughcut.html');
  },
);
