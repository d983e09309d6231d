import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { desk, phone, tapCard } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

const headingFocused = (page: Page, heading: string): Promise<unknown> =>
  page.waitForFunction(
    (name) => {
      const at = document.activeElement;
      return at?.tagName === 'H1' && at.textContent === name;
    },
    heading,
    { timeout: 5000 },
  );

describe('a move', () => {
  it('puts the focus on the heading of the screen that it leads to', async () => {
    const { page, close } = await workshop.visit({ viewport: desk });
    await page.goto(workshop.base);
    await page.getByRole('link', { name: 'I have a new sheet' }).click();
    await headingFocused(page, 'A new sheet');
    await page.getByRole('link', { name: 'Book' }).click();
    await headingFocused(page, 'The book');
    await page.getByRole('link', { name: 'Machine' }).click();
    await headingFocused(page, 'The machine');
    await page.goBack();
    await headingFocused(page, 'The book');
    await close();
  });
});

describe('the reader’s own colours', () => {
  it('show with a border what is chosen, and on no other choice', async () => {
    const { page, close } = await workshop.visit({ viewport: phone });
    await page.emulateMedia({ forcedColors: 'active' });
    await page.goto(`${workshop.base}/cards/describe`);
    await page.locator('.choice-option[data-selected]').first().waitFor();
    const outlined = (selector: string): Promise<boolean[]> =>
      page.$$eval(selector, (all) =>
        all.map((each) => getComputedStyle(each).outlineStyle === 'solid'),
      );
    const chosen = await outlined('.choice-option[data-selected]');
    const others = await outlined('.choice-option:not([data-selected])');
    expect([chosen.length > 0, others.length > 0]).toEqual([true, true]);
    expect(chosen.every(Boolean)).toBe(true);
    expect(others.some(Boolean)).toBe(false);
    await close();
  });
});

describe('an answer that is being worked out', () => {
  it('is never called no answer meanwhile, where a card has been read', async () => {
    const { page, close } = await workshop.visit({ viewport: phone });
    await page.goto(workshop.base);
    await tapCard(page);
    await page.waitForSelector('.answer-sentence[aria-busy="false"] .answer-cut');
    // From before the page's own scripts on, whatever the screen said is noted.
    await page.addInitScript(() => {
      const said: string[] = [];
      Object.assign(globalThis, { said });
      new MutationObserver(() => {
        const text = document.querySelector('main')?.textContent;
        if (text !== undefined && text !== said.at(-1)) said.push(text);
      }).observe(document, { childList: true, subtree: true, characterData: true });
    });
    await page.reload();
    await page.waitForSelector('.answer-sentence[aria-busy="false"] .answer-cut');
    const said = await page.evaluate(() => (globalThis as unknown as { said: string[] }).said);
    expect(said.some((text) => text.includes('Calculating…'))).toBe(true);
    expect(said.at(-1)).toMatch(/Cut at/);
    const none = /No (card|shape) of this sheet|No card of it yet|No setting yet|Tap each shape/;
    expect(said.filter((text) => none.test(text))).toEqual([]);
    await close();
  });
});
