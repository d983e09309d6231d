import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { oneOfEverything, type Made } from './everyScreen.ts';
import { desk, tapCard } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();
let made: Made;
let later = '';
beforeAll(async () => {
  made = await oneOfEverything(workshop);
  // A sheet with an earlier one of its material, a setting kept of it, and an order counted.
  const { page, close } = await workshop.visit({ viewport: desk });
  await page.goto(`${workshop.base}/cards/describe`);
  await page.getByLabel('Speeds', { exact: true }).fill('8, 10, 12, 14, 16, 18, 20');
  await page.getByRole('button', { name: 'Read it' }).click();
  await tapCard(page);
  await page.getByRole('button', { name: /^Keep .* in the book$/ }).click();
  await page.getByRole('link', { name: 'Open it' }).click();
  await page.getByText('Came from').waitFor();
  await page.getByLabel('Parts cut', { exact: true }).fill('200');
  await page.getByLabel('Length of cut of one part').first().fill('160');
  await page.getByRole('button', { name: 'Save the count' }).click();
  await page.getByText('All saved').waitFor({ state: 'attached' });
  await page.goBack();
  later = new URL(page.url()).pathname;
  await close();
});

/** Every question that the page puts to a thread, its number left away. */
const listen = async (page: Page): Promise<void> => {
  await page.addInitScript(() => {
    const kept: string[] = [];
    Reflect.set(globalThis, 'asked', kept);
    const post: unknown = Reflect.get(Worker.prototype, 'postMessage');
    Worker.prototype.postMessage = function (this: Worker, message: object) {
      kept.push(JSON.stringify({ ...message, id: undefined }));
      if (post instanceof Function) Reflect.apply(post, this, [message]);
    };
  });
};

const askedOn = (page: Page): Promise<string[]> =>
  page.evaluate(() => Reflect.get(globalThis, 'asked') as string[]);

describe('what the page asks of its threads', () => {
  it.each([
    ['a sheet', () => made.card],
    ['a sheet with much behind it', () => later],
    ['the bed', () => '/'],
    ['a kept setting', () => made.entry],
    ['a new card', () => `${made.study}/card`],
  ])('is asked once on the first load of %s', async (_name, address) => {
    const { page, close } = await workshop.visit({ viewport: desk });
    await listen(page);
    await page.goto(workshop.base + address());
    await page.locator('h1').waitFor();
    await page.waitForFunction(() => document.querySelector('main [aria-busy="true"]') === null);
    await page.waitForTimeout(3000);
    const asked = await askedOn(page);
    console.info(
      `${_name}: ${String(asked.length)} questions, ${String(new Set(asked).size)} of them different`,
    );
    expect(asked.length).toBe(new Set(asked).size);
    expect(asked.length).toBeLessThanOrEqual(2);
    await close();
  });
});
