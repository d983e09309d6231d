import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, desk, phone, picture, readFirstCard } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

const star = (x: number, y: number, r: number): string =>
  `M${Array.from({ length: 10 }, (_, i) => {
    const [angle, radius] = [(Math.PI * i) / 5, i % 2 === 0 ? r : 0.42 * r];
    return `${(x + radius * Math.sin(angle)).toFixed(3)} ${(y - radius * Math.cos(angle)).toFixed(3)}`;
  }).join('L')}Z`;

const svg = (body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="180mm" viewBox="0 0 300 180" fill="none">${body}</svg>`;

const stars = Array.from({ length: 18 }, (_, i) =>
  star(35 + 46 * (i % 6), 40 + 50 * Math.floor(i / 6), 20),
);
const drawing = svg(
  stars.map((d) => `<path stroke="#c00000" d="${d}"/>`).join('') +
    `<path stroke="#0000c0" d="M10 6H290M10 174H290"/>`,
);

/** Where the study is proven that all visitors bring their drawings to. */
let proving = '';

/** A study with an answer. */
const makeStudy = async (): Promise<void> => {
  const { page, close } = await workshop.visit({ viewport: phone });
  await readFirstCard(page, workshop.base);
  await page.getByRole('link', { name: 'Prove it on the drawing' }).click();
  await page.waitForURL(/\/prove$/);
  proving = new URL(page.url()).pathname;
  await close();
};
beforeAll(makeStudy);

const openStudy = async (page: Page): Promise<void> => {
  await page.goto(workshop.base + proving);
};

const bring = (page: Page, name: string, text: string): Promise<void> =>
  page.setInputFiles('input[type=file]', {
    name,
    mimeType: 'image/svg+xml',
    buffer: Buffer.from(text),
  });

const proven = async (page: Page): Promise<void> => {
  await page.waitForSelector('.proof-result[aria-busy="false"]', { timeout: 60_000 });
};

describe('a setting on the drawing', () => {
  it('shows where it slows, what is promised, and what power in corners to type', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: desk });
    await openStudy(page);
    await bring(page, 'stars.svg', drawing);
    await proven(page);
    await page.getByText(/^Of 18 parts (none|about \S+) should need a knife/).waitFor();
    await page.getByText(/^About .* on a common machine/).waitFor();
    // The two lines in blue are no parts; left out, they are not counted.
    await page.getByText('2 open lines beside them').waitFor();
    await page.getByRole('checkbox', { name: /#0000c0/ }).uncheck();
    await page.getByText('2 open lines beside them').waitFor({ state: 'detached' });
    await proven(page);
    // Nobody has said yet where the power ramp starts: then no figure for the corners.
    await page.getByText(/No figure for the corner power yet/).waitFor();
    // Little power in corners shows at once, as numbered places in picture and list.
    await page.getByLabel('Power ramp starts at').fill('9');
    await page.getByLabel('Corner power').fill('15');
    await page.locator('.proof-places li').first().waitFor();
    await proven(page);
    expect(await page.locator('.proof-mark').count()).toBeGreaterThan(0);
    await picture(page, 'proof-desk');
    expect(await axeFindings(page)).toEqual([]);
    await page.getByRole('button', { name: /^See it with / }).click();
    await page.waitForTimeout(600);
    await proven(page);
    await picture(page, 'proof-desk-best');
    expect(complaints).toEqual([]);
    await close();
  });

  it('reads on a phone, in the dark too', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      const { page, close } = await workshop.visit({ viewport: phone, colorScheme });
      await openStudy(page);
      await bring(page, 'stars.svg', drawing);
      await proven(page);
      await page.getByLabel('Power ramp starts at').fill('9');
      await page.getByLabel('Corner power').fill('15');
      await page.waitForTimeout(600);
      await proven(page);
      expect(await axeFindings(page)).toEqual([]);
      const sideways = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(sideways).toBeLessThanOrEqual(0);
      await picture(page, `proof-phone-${colorScheme}`);
      await close();
    }
  });

  it('says what is wrong with a file that it cannot read', async () => {
    const { page, close } = await workshop.visit({ viewport: phone });
    await openStudy(page);
    await bring(page, 'empty.svg', svg(''));
    await page.getByText('The drawing has no line to cut.').waitFor();
    await close();
  });

  it('says of which drawing a proof is where the next one was stopped', async () => {
    const { page, close } = await workshop.visit({ viewport: desk });
    await openStudy(page);
    const square = '<path stroke="#000" d="M1 1h30v30h-30z"/>';
    await bring(page, 'first.svg', svg(square));
    await proven(page);
    const many = Array.from({ length: 20_000 }, (_, i) => {
      const [x, y] = [1 + 1.4 * (i % 200), 1 + 1.4 * Math.floor(i / 200)];
      return `<path stroke="#000" d="M${x.toFixed(1)} ${y.toFixed(1)}h1v1h-1z"/>`;
    });
    await bring(page, 'second.svg', svg(many.join('')));
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByText('Stopped: second.svg is not proved').waitFor();
    await page.getByText('What stands below is the proof before: first.svg').waitFor();
    await page.locator('.proof-result', { hasText: 'first.svg:' }).waitFor();
    expect(await page.locator('.proof-result', { hasText: 'second.svg' }).count()).toBe(0);
    await page.getByRole('button', { name: 'Prove it' }).click();
    await page.locator('.proof-result', { hasText: 'second.svg:' }).waitFor();
    expect(await page.getByText('Stopped:').count()).toBe(0);
    await close();
  });

  it('leaves the page alive while it works through 20 000 paths, and can be stopped', async () => {
    const { page, close } = await workshop.visit({ viewport: desk });
    await openStudy(page);
    const rings = Array.from({ length: 20_000 }, (_, i) => {
      const [x, y] = [1 + 1.4 * (i % 200), 1 + 1.4 * Math.floor(i / 200)];
      return `<path stroke="#000" d="M${x.toFixed(1)} ${y.toFixed(1)}h1v1h-1z"/>`;
    });
    await bring(page, 'many.svg', svg(rings.join('')));
    await page.getByRole('button', { name: 'Stop' }).waitFor();
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByRole('button', { name: 'Stop' }).waitFor({ state: 'detached' });
    expect(await page.locator('.proof-result').count()).toBe(0);
    await page.evaluate(() => {
      const page = globalThis as unknown as { longestTaskMs: number };
      page.longestTaskMs = 0;
      new PerformanceObserver((list) => {
        for (const { duration } of list.getEntries())
          page.longestTaskMs = Math.max(page.longestTaskMs, duration);
      }).observe({ entryTypes: ['longtask'] });
    });
    const started = Date.now();
    await bring(page, 'again.svg', svg(rings.join('')));
    await page.getByRole('button', { name: 'Stop' }).waitFor();
    const longestMs = await page.evaluate(async () => {
      let [longest, last] = [0, performance.now()];
      for (let i = 0; i < 60; i += 1) {
        await new Promise((resolve) => requestAnimationFrame(resolve));
        longest = Math.max(longest, performance.now() - last);
        last = performance.now();
      }
      return longest;
    });
    console.info(`longest frame while proving 20 000 paths: ${longestMs.toFixed(0)} ms`);
    await proven(page);
    const tookMs = Date.now() - started;
    // As a share of the work, since a busy computer makes both long.
    expect(longestMs / tookMs).toBeLessThan(1 / 4);
    await page.getByText(/^Of 20000 parts about \S+ should need a knife/).waitFor();
    await page.waitForTimeout(500);
    const taskMs = await page.evaluate(
      () => (globalThis as unknown as { longestTaskMs: number }).longestTaskMs,
    );
    console.info(
      `20 000 paths proven in ${String(tookMs)} ms; longest task of the page: ${taskMs === 0 ? 'under 50' : taskMs.toFixed(0)} ms`,
    );
    expect(taskMs / tookMs).toBeLessThan(1 / 4);
    await picture(page, 'proof-many');
    await close();
  });
});
