import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { everyScreen, oneOfEverything, settled, type Made } from './everyScreen.ts';
import { desk, openAll, phone } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();
let made: Made;
beforeAll(async () => {
  made = await oneOfEverything(workshop);
});

/** What would be read out by itself as it changes: what it is, or where it stands when it does not say. */
const liveRegions = (page: Page): Promise<string[]> =>
  page.$$eval('[role="status"], [role="alert"], [role="log"], [aria-live], output', (all) =>
    all.map((each) => each.getAttribute('data-said') ?? `unnamed: ${each.outerHTML.slice(0, 120)}`),
  );

/** The screens on which something is read out, and what; nothing is on any other. */
const readOut: Readonly<Record<string, readonly string[]>> = {
  // The sheet's answer, that it is kept, a count that cannot be, and what a typed time says of the card.
  study: ['answer', 'done', 'wrong', 'answer'],
  take: ['answer'],
  entry: ['wrong'],
  run: ['wrong'],
  motion: ['answer'],
};

describe('what a screen reads out by itself', () => {
  it('is the answer, and that what was just done is done or cannot be', async () => {
    const { page, close } = await workshop.visit({ viewport: phone });
    const found: Record<string, readonly string[]> = {};
    for (const [name, address] of everyScreen(made)) {
      await page.goto(workshop.base + address);
      await settled(page);
      await openAll(page);
      const live = await liveRegions(page);
      if (live.length > 0) found[name] = live;
    }
    expect(found).toEqual(readOut);
    await close();
  });
});

describe('a move within the page', () => {
  it.each([
    ['phone', phone],
    ['desk', desk],
  ])(
    'puts the focus on the heading, whichever screen it leads to, on a %s',
    async (_n, viewport) => {
      const { page, close } = await workshop.visit({ viewport });
      const found: string[] = [];
      for (const [name, address] of everyScreen(made)) {
        // From another screen, as a link leads.
        await page.goto(`${workshop.base}${address === '/book' ? '/machine' : '/book'}`);
        await settled(page);
        await page.evaluate((to) => history.pushState(null, '', to), address);
        const hasFocus = await page
          .waitForFunction(() => document.activeElement?.tagName === 'H1', undefined, {
            timeout: 5000,
          })
          .then(() => settled(page))
          // What came later has not taken the focus away, nor the heading that had it.
          .then(() => page.evaluate(() => document.activeElement === document.querySelector('h1')))
          .catch(() => false);
        if (!hasFocus) found.push(name);
      }
      expect(found).toEqual([]);
      await close();
    },
  );
});
