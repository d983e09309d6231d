import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { launchBrowser } from '../../bench/launchBrowser.ts';
import { answerText, cellsOn, desk, overflow, phone, picture, tapCard } from './page.ts';
import { openWorkshop } from './workshop.ts';

/** The page in one file, as it is opened from a disk. */
const file = pathToFileURL(join(import.meta.dirname, '../../build/alone/throughcut.html')).href;

const cut = /^Cut at [\d.]+\u202fmm\/s, [\d.]+\u202f%\.$/;
const saved = (page: Page): Promise<void> =>
  page.getByText('All saved').waitFor({ state: 'attached' });
const heading = (page: Page, name: string): Promise<void> =>
  page.getByRole('heading', { level: 1, name, exact: true }).waitFor();
const tab = async (page: Page, name: string): Promise<void> =>
  page.getByRole('link', { name, exact: true }).click();

/** What an export holds, as far as it is looked at here. */
interface Exported {
  readonly studies: readonly [
    { readonly id: string; readonly cards: readonly [{ readonly code: string }] },
  ];
}

describe('the page that works alone, opened from a disk', () => {
  const workshop = openWorkshop();
  let browser: Awaited<ReturnType<typeof launchBrowser>>;
  let context: BrowserContext;
  let complaints: string[];
  let asked: string[];
  beforeAll(async () => {
    browser = await launchBrowser();
  });
  afterAll(() => browser.close());
  beforeEach(async () => {
    context = await browser.newContext({ viewport: desk, acceptDownloads: true });
    complaints = [];
    asked = [];
    context.on('page', (page) => {
      page.on('pageerror', (error) => complaints.push(error.message));
      page.on('console', (message) => {
        if (message.type() === 'error') complaints.push(message.text());
      });
      page.on('request', (request) => asked.push(request.url()));
    });
  });
  afterEach(() => context.close());

  const open = async (address = file): Promise<Page> => {
    const page = await context.newPage();
    await page.goto(address);
    return page;
  };
  const downloaded = async (page: Page, name: string): Promise<string> => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name, exact: true }).click(),
    ]);
    return readFile(await download.path(), 'utf8');
  };

  it('answers a card, keeps it over a reload and a killed tab, and asks nobody anything', async () => {
    const page = await open();
    await heading(page, 'What fell out?');
    await tapCard(page);
    await page.waitForSelector('.answer-cut');
    const answer = await answerText(page);
    expect(answer).toMatch(cut);
    await saved(page);
    await page.reload();
    await heading(page, 'On the bed');
    await page.getByText('12 of 12 shapes read').waitFor();
    expect(await answerText(page)).toBe(answer);
    await page.goto('chrome://crash').catch(() => undefined);
    const again = await open();
    await heading(again, 'On the bed');
    await again.getByText('12 of 12 shapes read').waitFor();
    expect(await answerText(again)).toBe(answer);
    expect(asked.filter((url) => !/^(file|data|blob|chrome):/.test(url))).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it('goes by its addresses: screens, parts of screens, back, and a reload in the middle', async () => {
    const page = await open();
    await heading(page, 'What fell out?');
    await tab(page, 'Machine');
    await heading(page, 'The machine');
    expect(page.url()).toBe(`${file}#/machine`);
    await page.locator('.shell-skip').focus();
    await page.keyboard.press('Enter');
    expect(page.url()).toBe(`${file}#/machine`);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('main');
    await tab(page, 'Book');
    await heading(page, 'The book');
    await page.goBack();
    await heading(page, 'The machine');
    await page.reload();
    await heading(page, 'The machine');
    await picture(page, 'alone machine');
    expect(complaints).toEqual([]);
  });

  it('opens the example workshop, and every door of it on a phone', async () => {
    const page = await open();
    await page.setViewportSize(phone);
    await page.getByRole('button', { name: 'Look around an example workshop' }).click();
    await heading(page, 'On the bed');
    await page.waitForSelector('.answer-cut');
    for (const place of ['Book', 'Machine', 'Bed']) {
      await tab(page, place);
      await page.locator('h1').waitFor();
      expect(await overflow(page)).toBe(0);
    }
    await tab(page, 'Book');
    await page.locator('.book-entry').first().click();
    await page.waitForURL(/#\/book\/./);
    await page.locator('h1').waitFor();
    expect(await overflow(page)).toBe(0);
    await picture(page, 'alone entry');
    expect(complaints).toEqual([]);
  });

  it('gives the very files that a server gives of the same card, and says what it cannot print', async () => {
    const page = await open();
    await heading(page, 'What fell out?');
    await tapCard(page);
    await page.waitForSelector('.answer-cut');
    await saved(page);
    await tab(page, 'Book');
    await page.getByText('Save everything elsewhere, or bring it in').click();
    const everything = await downloaded(page, 'Everything in one file');
    const taken = await fetch(`${workshop.base}/api/import`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: everything,
    });
    expect(taken.status).toBe(200);
    const [{ id, cards }] = (JSON.parse(everything) as Exported).studies;
    await page.goto(`${file}#/study/${id}/card/${cards[0].code}/machine`);
    for (const [kind, button] of [
      ['svg', 'SVG'],
      ['dxf', 'DXF'],
      ['gcode', 'G-code'],
    ] as const) {
      const served = await fetch(
        `${workshop.base}/api/studies/${id}/cards/${cards[0].code}/card.${kind}`,
      );
      expect(await downloaded(page, button)).toBe(await served.text());
    }
    await page.getByRole('button', { name: 'Job sheet (PDF)' }).click();
    await page.getByText('makes no PDF files').waitFor();
    await picture(page, 'alone no pdf');
    expect(complaints).toEqual([]);
  });

  it('shows in one tab what another one keeps', async () => {
    const [one, two] = [await open(), await open()];
    await heading(one, 'What fell out?');
    await heading(two, 'What fell out?');
    await one.bringToFront();
    await tapCard(one);
    await one.waitForSelector('.answer-cut');
    await saved(one);
    const [cell] = await cellsOn(one);
    expect(cell).toBeDefined();
    await two.bringToFront();
    await two.reload();
    await heading(two, 'On the bed');
    await two.getByText('12 of 12 shapes read').waitFor();
    expect(complaints).toEqual([]);
  });
});
