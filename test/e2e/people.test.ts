import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { launchBrowser } from '../../bench/launchBrowser.ts';
import { api } from '../../src/wire/api.ts';
import { axeFindings, desk, overflow, phone, picture, readFirstCard, tapCard } from './page.ts';
import { openWorkshop } from './workshop.ts';

/** The page in one file, as it is opened from a disk. */
const file = pathToFileURL(join(import.meta.dirname, '../../build/alone/throughcut.html')).href;

const openFold = async (page: Page, title: string): Promise<void> => {
  const fold = page.locator('details', { has: page.getByText(title, { exact: true }) });
  await fold.waitFor();
  if ((await fold.getAttribute('open')) === null)
    await fold.getByText(title, { exact: true }).click();
};
const giveName = async (page: Page, name: string): Promise<void> => {
  await page.getByLabel('Name', { exact: true }).fill(name);
};
/** Keeps the answer in the book, and opens what was kept. */
const keepIt = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: /^Keep .* in the book$/ }).click();
  await page.getByRole('link', { name: 'Open it' }).click();
  await page.getByText('Came from').waitFor();
};
const takeOut = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Take it out of the book' }).click();
  await page.getByText(/For 24 hours it can be taken back in the book/).waitFor();
  await page.getByRole('button', { name: 'Yes', exact: false }).first().click();
  await page.getByRole('heading', { level: 1, name: 'The book' }).waitFor();
};

describe('names, and a change that is taken back', () => {
  const workshop = openWorkshop();

  it('stand where somebody asks, and one device takes back what another did', async () => {
    const ada = await workshop.visit({ viewport: phone });
    await ada.page.goto(`${workshop.base}/machine`);
    await giveName(ada.page, 'Ada');
    await ada.page.locator('#name').scrollIntoViewIfNeeded();
    await picture(ada.page, 'phone-name-here');
    expect(await overflow(ada.page)).toBe(0);
    await ada.page.reload();
    expect(await ada.page.getByLabel('Name', { exact: true }).inputValue()).toBe('Ada');
    await readFirstCard(ada.page, workshop.base);
    await keepIt(ada.page);
    await ada.page.getByText(/by Ada\./).waitFor();
    const address = ada.page.url();
    await openFold(ada.page, 'Who changed this setting?');
    await ada.page.getByText(/^Ada kept setting/).waitFor();
    expect(await axeFindings(ada.page)).toEqual([]);
    expect(await overflow(ada.page)).toBe(0);
    await picture(ada.page, 'phone-who-changed');
    await ada.page.goBack();
    await ada.page.reload();
    await openFold(ada.page, 'Who read this card?');
    await ada.page.getByText(/^Ada: 12 shapes, the last/).waitFor();
    await picture(ada.page, 'phone-who-read');

    const bo = await workshop.visit({ viewport: phone });
    await bo.page.goto(`${workshop.base}/machine`);
    await giveName(bo.page, 'Bo');
    await bo.page.goto(address);
    await takeOut(bo.page);
    await openFold(bo.page, 'Who changed which kept setting?');
    await bo.page.getByText(/^Bo took setting/).waitFor();
    await picture(bo.page, 'phone-taken-out');

    await ada.page.goto(`${workshop.base}/book`);
    await openFold(ada.page, 'Who changed which kept setting?');
    await ada.page.getByRole('button', { name: /^Take it back: Bo took setting/ }).click();
    await ada.page.getByText(/^Ada put setting .* back into the book\./).waitFor();
    await ada.page.getByText('Taken back since.').waitFor();
    await ada.page.locator('.book-entry').waitFor();
    expect(await axeFindings(ada.page)).toEqual([]);
    expect(await overflow(ada.page)).toBe(0);
    await picture(ada.page, 'phone-taken-back');
    await ada.page.setViewportSize(desk);
    await picture(ada.page, 'desk-taken-back');
    // The other device is told: its book has the setting again, and offers no second undo of the same.
    await bo.page.locator('.book-entry').waitFor();
    await expect.poll(() => bo.page.getByRole('button', { name: /took setting/ }).count()).toBe(0);

    const reply = await fetch(`${workshop.base}${api.exportAll.path}`);
    const exported = api.exportAll.reply.parse(await reply.json());
    expect(new Set(exported.studies[0]?.events.map(({ by }) => by))).toEqual(new Set(['Ada']));
    expect([...ada.complaints, ...bo.complaints]).toEqual([]);
    await ada.close();
    await bo.close();
  });
});

describe('the same in a page that works alone', () => {
  it('bears the name given there, and takes back what was done', async () => {
    const browser = await launchBrowser();
    try {
      const page = await browser.newPage({ viewport: phone });
      await page.goto(`${file}#/machine`);
      await giveName(page, 'Cy');
      await page.goto(file);
      await page.reload();
      await tapCard(page);
      await page.waitForSelector('.answer-cut');
      await page.getByText('All saved').waitFor({ state: 'attached' });
      const own = page.getByRole('button', { name: 'Yes, keep it as my sheet' });
      if (await own.isVisible()) await own.click();
      await keepIt(page);
      await page.getByText(/by Cy\./).waitFor();
      await takeOut(page);
      await openFold(page, 'Who changed which kept setting?');
      await page.getByRole('button', { name: /^Take it back: Cy took setting/ }).click();
      await page.getByText(/^Cy put setting .* back into the book\./).waitFor();
      await page.locator('.book-entry').waitFor();
      expect(await overflow(page)).toBe(0);
      await picture(page, 'alone-taken-back');
    } finally {
      await browser.close();
    }
  });
});
