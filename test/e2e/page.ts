import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';

export const phone = { width: 390, height: 844 };
export const desk = { width: 1280, height: 900 };

export interface OpenedPage {
  readonly page: Page;
  /** Everything that the browser complained of, content policy included. */
  readonly complaints: readonly string[];
  readonly close: () => Promise<void>;
}

export interface VisitOptions {
  readonly viewport: { readonly width: number; readonly height: number };
  readonly colorScheme?: 'light' | 'dark';
  /** Pixels of the picture to one of the page. */
  readonly deviceScaleFactor?: number;
}

/** A fresh visitor: empty storage, no cookies. */
export const visit = async (browser: Browser, options: VisitOptions): Promise<OpenedPage> => {
  const context = await browser.newContext({ colorScheme: 'light', ...options });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  return { page, complaints, close: () => context.close() };
};

/** A cell as its own words say it. */
export interface CellOnBench {
  readonly id: string;
  readonly speed: number;
  readonly power: number;
  readonly passes: number;
}

/** Every cell of the card on the bench. */
export const cellsOn = async (page: Page): Promise<CellOnBench[]> => {
  await page.waitForSelector('[data-cell]');
  return page.$$eval('[data-cell]', (buttons) =>
    buttons.map((button) => {
      const [, speed, power, passes] =
        /^([\d.]+) mm\/s([\d.]+)%(?: x(\d+))?/.exec(button.textContent) ?? [];
      return {
        id: button.getAttribute('data-cell') ?? '',
        speed: Number(speed),
        power: Number(power),
        passes: Number(passes ?? '1'),
      };
    }),
  );
};

/** How hard a cell is to cut through: faster, weaker, fewer passes. */
const hardness = ({ speed, power, passes }: CellOnBench): number => speed / power / passes ** 0.8;

/**
 * Taps a card as a workshop would find it: the easy ones out, a few hang, the hard ones stay. `out` and `through`: which
 * share of the cells came out, and came out or hung. Returns the taps it took.
 */
export const tapCard = async (page: Page, { out = 0.5, through = 0.7 } = {}): Promise<number> => {
  const cells = (await cellsOn(page)).sort((a, b) => hardness(a) - hardness(b));
  let taps = 0;
  for (const [i, { id }] of cells.entries()) {
    const share = i / cells.length;
    const needed = share < out ? 1 : share < through ? 2 : 3;
    for (let n = 0; n < needed; n += 1) await page.click(`[data-cell="${id}"]`);
    taps += needed;
  }
  await ownSample(page);
  return taps;
};

/** Names a sheet, as thick as the readings say where any are given, and reads its first card. */
export const readFirstCard = async (page: Page, base: string, measured?: string): Promise<void> => {
  await page.goto(`${base}/sheets/new`);
  await page.getByLabel('Material').fill('birch plywood');
  if (measured !== undefined) await page.getByLabel('Measured').fill(measured);
  await page.getByRole('button', { name: 'Make a card for it' }).click();
  await page.getByRole('button', { name: 'Take it to the machine' }).click();
  await page.getByRole('link', { name: 'It is cut: read it' }).click();
  await tapCard(page);
};

/** Where the sample card of the first screen was tapped: it is the visitor's own. */
export const ownSample = async (page: Page): Promise<void> => {
  const own = page.getByRole('button', { name: 'Yes, keep it as my sheet' });
  if (await own.isVisible()) await own.click();
};

export const answerText = (page: Page): Promise<string> =>
  page.locator('.answer-cut').first().innerText();

/** Opens every disclosure, so that what is one click below is looked at too. */
export const openAll = (page: Page): Promise<void> =>
  page.$$eval('details', (all) => {
    for (const each of all) each.open = true;
  });

/** How far the page scrolls sideways: not at all, whatever the width. */
export const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

const screens = join(import.meta.dirname, '../../build/screens');

/** A picture of the screen for people to look at, in build/screens, where they ask for it: `THROUGHCUT_SCREENS=1 npm test`. */
export const picture = async (page: Page, name: string): Promise<void> => {
  if (process.env['THROUGHCUT_SCREENS'] !== '1') return;
  mkdirSync(screens, { recursive: true });
  await page.screenshot({ path: join(screens, `${name}.png`), fullPage: true });
};

/** What axe finds against WCAG 2.2 A and AA, as short lines. */
export const axeFindings = async (page: Page): Promise<string[]> => {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const { axe: inPage } = globalThis as unknown as {
      axe: {
        run: (
          context: unknown,
          options: unknown,
        ) => Promise<{
          violations: { id: string; nodes: { target: string[]; failureSummary: string }[] }[];
        }>;
      };
    };
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    const { violations } = await inPage.run(document, { runOnly: { type: 'tag', values: tags } });
    return violations.flatMap(({ id, nodes }) =>
      nodes.map(({ target, failureSummary }) => `${id}: ${target.join(' ')} ${failureSummary}`),
    );
  });
};

const looks = [
  { name: 'phone', viewport: phone, colorScheme: 'light' },
  { name: 'phone-dark', viewport: phone, colorScheme: 'dark' },
  { name: 'desk-dark', viewport: desk, colorScheme: 'dark' },
  { name: 'desk', viewport: desk, colorScheme: 'light' },
] as const;

/** What axe finds, and what scrolls sideways, on phone and desk, in the light and in the dark; a picture of each. */
export const findingsInEveryLook = async (page: Page, of: string): Promise<string[]> => {
  const findings: string[] = [];
  for (const { name, viewport, colorScheme } of looks) {
    await page.setViewportSize(viewport);
    await page.emulateMedia({ colorScheme });
    await page.waitForTimeout(200); // what grows with the window has grown
    const found = await axeFindings(page);
    const sideways = await overflow(page);
    if (sideways > 0) found.push(`scrolls sideways by ${String(sideways)} px`);
    findings.push(...found.map((line) => `${name}: ${line}`));
    await picture(page, `${of}-${name}`);
  }
  return findings;
};
