import { mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { cellsOn, tapCard } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

/** `npm run pictures` copies them from here to docs/pictures. */
const folder = join(import.meta.dirname, '../../build/pictures');
mkdirSync(folder, { recursive: true });

/** What a picture in the README may weigh. */
const mostBytes = 150_000;

/** What is seen of the page without scrolling. */
const keepView = async (page: Page, name: string): Promise<void> => {
  await page.mouse.move(0, 0);
  await page.evaluate(() => scrollTo({ top: 0, behavior: 'instant' }));
  // What follows the scrolling, as the answer at the foot of a phone, comes a moment later.
  await page.waitForTimeout(300);
  const path = join(folder, `${name}.png`);
  await page.screenshot({ path });
  expect(statSync(path).size, name).toBeLessThan(mostBytes);
};

describe('the pictures of the README', () => {
  it('show a card that is read on a phone', async () => {
    const viewport = { width: 390, height: 844 };
    const { page, complaints, close } = await workshop.visit({ viewport, deviceScaleFactor: 1 });
    await page.goto(workshop.base);
    await tapCard(page, { out: 0.7, through: 0.85 });
    await page.waitForSelector('.answer-sentence[aria-busy="false"] .answer-cut');
    await keepView(page, 'phone');
    expect(complaints).toEqual([]);
    await close();
  });

  it('show the job at a desk: the card, the machine, the answer, the sheet on the bed', async () => {
    const viewport = { width: 1200, height: 780 };
    const { page, complaints, close } = await workshop.visit({ viewport, deviceScaleFactor: 0.75 });
    await page.goto(`${workshop.base}/sheets/new`);
    await page.getByLabel('Material').fill('birch plywood');
    await page.getByLabel('Thickness measured').fill('3.1, 3.15, 3.05');
    await page.getByLabel('Speed', { exact: true }).fill('14');
    await page.getByLabel('Power setting', { exact: true }).fill('34');
    await page.getByText('nearly always').click();
    await page.getByRole('button', { name: 'Make a card for it' }).click();
    await page.getByRole('img', { name: /as it will be cut/ }).waitFor();
    await keepView(page, 'card');

    await page.getByRole('button', { name: 'Take it to the machine' }).click();
    await page.getByRole('link', { name: 'SVG' }).waitFor();
    await keepView(page, 'machine');

    await page.getByRole('link', { name: 'It is cut: read it' }).click();
    await cellsOn(page);
    await tapCard(page, { out: 0.7, through: 0.85 });
    await page.waitForSelector('.answer-sentence[aria-busy="false"] .answer-cut');
    await page.getByRole('button', { name: /^Keep .* in the book$/ }).waitFor();
    await keepView(page, 'answer');

    await page.getByRole('button', { name: /^Keep .* in the book$/ }).click();
    await page.getByRole('link', { name: 'Open it' }).click();
    await page.getByLabel('Parts cut').fill('200');
    await page.getByLabel('Needed a knife').fill('2');
    await page.getByLabel('Lost to a pocket or knot').fill('1');
    await page.getByLabel('Length of cut of one part').fill('60');
    await page.getByRole('button', { name: 'Save the count' }).click();
    await page.getByText('197 of 200 parts out').first().waitFor();
    await page.getByRole('link', { name: 'Bed' }).click();
    await page.getByText('Last order').waitFor();
    await keepView(page, 'bed');
    expect(complaints).toEqual([]);
    await close();
  });
});
