import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { everyScreen, oneOfEverything, settled, type Made } from './everyScreen.ts';
import { desk, openAll } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();
let made: Made;
beforeAll(async () => {
  made = await oneOfEverything(workshop);
});

/** Of each class of element on the screen, in how many ways it would be printed: whether it shows, how large, in which colours. */
const asPrinted = async (page: Page): Promise<ReadonlyMap<string, ReadonlySet<string>>> => {
  await page.emulateMedia({ media: 'print' });
  const all = await page.$$eval('html, body, h1, body [class]', (elements) => {
    // A colour on its way to another is neither.
    for (const change of document.getAnimations()) change.finish();
    return elements.map((element): [string, string] => {
      const { display, fontSize, color, backgroundColor, maxWidth } = getComputedStyle(element);
      return [
        `${element.tagName} ${element.getAttribute('class') ?? ''}${element.matches(':disabled') ? ' disabled' : ''}`,
        [display, fontSize, color, backgroundColor, maxWidth].join(' | '),
      ];
    });
  });
  await page.emulateMedia({ media: 'screen' });
  const ways = new Map<string, Set<string>>();
  for (const [what, way] of all) ways.set(what, (ways.get(what) ?? new Set()).add(way));
  return ways;
};

/** As a link within the page leads. */
const goWithin = async (page: Page, address: string): Promise<void> => {
  await page.evaluate((to) => history.pushState(null, '', to), address);
  await page.waitForFunction(() => document.activeElement?.tagName === 'H1');
  await settled(page);
  await openAll(page);
};

/** The screens with something on them that is printed, or with rules for printing among their styles. */
const printable = [
  'study',
  'take',
  'card',
  'label',
  'order',
  'prove',
  'four corners',
  'promises kept',
];

describe('what is printed', () => {
  it('is that of the screen that stands, whichever stood before it', async () => {
    const next = ['/book', '/machine', made.entry];
    const { page, close } = await workshop.visit({ viewport: desk });
    const alone = new Map<string, Awaited<ReturnType<typeof asPrinted>>>();
    for (const address of next) {
      await page.goto(`${workshop.base}/not-taken`);
      await settled(page);
      await goWithin(page, address);
      alone.set(address, await asPrinted(page));
    }
    const found: string[] = [];
    let held = 0;
    for (const [name, address] of everyScreen(made)) {
      if (!printable.includes(name)) continue;
      await page.goto(workshop.base + address);
      await settled(page);
      await page.emulateMedia({ media: 'print' });
      await page.emulateMedia({ media: 'screen' });
      // Styles stay once they are fetched.
      for (const after of next) {
        await goWithin(page, after);
        for (const [what, ways] of await asPrinted(page)) {
          const before = alone.get(after)?.get(what);
          if (before === undefined) continue; // A caution that is said in full once, and the like.
          held += 1;
          for (const way of ways)
            if (!before.has(way))
              found.push(
                `${after} after ${name}: ${what} is ${way}, not ${[...before].join(' / ')}`,
              );
        }
      }
    }
    expect(found).toEqual([]);
    expect(held).toBeGreaterThan(300);
    await close();
  });
});
