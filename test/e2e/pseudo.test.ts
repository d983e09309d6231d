import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { opening } from '../pseudo/inPseudo.ts';
import { outside } from '../pseudo/outside.ts';
import { pseudoLanguage } from '../pseudo/pseudoLanguage.ts';
import { everyScreen, oneOfEverything, settled, type Made } from './everyScreen.ts';
import { openAll, overflow, phone, picture } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();
const folder = mkdtempSync(join(tmpdir(), 'throughcut-pseudo-'));

let made: Made;
beforeAll(async () => {
  await build({
    configFile: join(import.meta.dirname, '../../vite.config.ts'),
    logLevel: 'error',
    plugins: [pseudoLanguage()],
    build: { outDir: folder },
  });
  made = await oneOfEverything(workshop);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The page in the other language, on the same server: what is not its own file is asked of the server. */
const inTheOther = async (page: Page): Promise<void> => {
  await page.route(
    (url) => !url.pathname.startsWith('/api/'),
    async (route) => {
      const { pathname } = new URL(route.request().url());
      const path = join(folder, pathname);
      if (pathname !== '/' && existsSync(path)) await route.fulfill({ path });
      else if (route.request().isNavigationRequest())
        await route.fulfill({ path: join(folder, 'index.html') });
      else await route.continue();
    },
  );
};

/** What stands on the page, in the order in which it is read, and what is said of pictures and fields. */
const saidOn = (page: Page): Promise<{ texts: string[]; attributes: string[] }> =>
  page.evaluate(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const texts: string[] = [];
    while (walker.nextNode() !== null) {
      const node = walker.currentNode;
      if (node.parentElement?.closest('script, style, noscript') === null)
        texts.push(node.textContent ?? '');
    }
    const attributes = ['aria-label', 'title', 'alt', 'placeholder', 'aria-description'].flatMap(
      (name) =>
        [...document.querySelectorAll(`[${name}]`)].map((each) => each.getAttribute(name) ?? ''),
    );
    return { texts, attributes: [document.title, ...attributes] };
  });

/**
 * What is no sentence and the same in any language: the product's name, kinds of files, codes of cards and shapes, letters of
 * settings, figures with their units, commands of a machine.
 */
const anyLanguage =
  /^(?:(?:· )?Throughcut|(?:SVG|DXF|G-code),?|[A-Z0-9]{0,5}|i|(?:[\d.,]+\s)?(?:mm|mm\/s|%|mA|min|s)|[GM]\d[\s\S]*)$/;

const escapes = (text: string): boolean => !anyLanguage.test(text);

describe('a language that is a third longer', () => {
  it('is spoken on every screen, with not a word of another beside it, and overflows none', async () => {
    const { page, close } = await workshop.visit({ viewport: phone });
    await inTheOther(page);
    const escaped: string[] = [];
    let heard = 0;
    for (const [name, address] of everyScreen(made)) {
      await page.goto(workshop.base + address);
      await settled(page);
      await openAll(page);
      const { texts, attributes } = await saidOn(page);
      heard += texts.filter((text) => text.includes(opening)).length;
      const left = [...outside(texts), ...attributes.flatMap((text) => outside([text]))].filter(
        escapes,
      );
      escaped.push(...[...new Set(left)].map((text) => `${name}: ${text}`));
      const sideways = await overflow(page);
      if (sideways > 0) escaped.push(`${name}: scrolls sideways by ${String(sideways)} px`);
      await picture(page, `pseudo-${name.replaceAll(' ', '-')}`);
    }
    expect(escaped).toEqual([]);
    expect(heard).toBeGreaterThan(500);
    await close();
  });
});
