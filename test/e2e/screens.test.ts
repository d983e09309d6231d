import { gzipSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import { tapThrough } from '../../bench/taps/tapThrough.ts';
import { everyScreen, oneOfEverything, settled, type Made } from './everyScreen.ts';
import { cutOff, enlargeText } from './cutOff.ts';
import { axeFindings, desk, openAll, overflow, phone, tapCard } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

const small = { width: 360, height: 640 };
const huge = { width: 3840, height: 2160 };

describe('the first view', () => {
  it('comes compressed, in at most 150 kB with its typefaces and 15 requests, and without what it does not need', async () => {
    const { page, close } = await workshop.visit({ viewport: phone });
    const asked: string[] = [];
    const sizes: Promise<number>[] = [];
    const bare: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    page.on('response', (response) => {
      if (response.url().endsWith('/api/live')) return; // stays open
      // Typefaces are packed as they are.
      const isPacked = response.url().endsWith('.woff2');
      sizes.push(response.body().then((body) => (isPacked ? body : gzipSync(body)).length));
      if (isPacked || !/\/(assets\/.*\.(js|css))?(\?|$)/.test(response.url())) return;
      if (response.headers()['content-encoding'] === undefined) bare.push(response.url());
    });
    await page.goto(workshop.base);
    await page.waitForSelector('[data-cell]');
    await page.waitForTimeout(1500); // whatever else the first view fetches
    const bytes = (await Promise.all(sizes)).reduce((sum, size) => sum + size, 0);
    expect(bytes).toBeGreaterThan(50_000);
    expect(bytes).toBeLessThanOrEqual(150_000);
    // Two typefaces are among it, cut down to what the page itself says, and hold no text up.
    expect(asked.filter((url) => url.endsWith('.woff2')).length).toBe(2);
    expect(
      await page.evaluate(() => [...document.fonts].filter(({ display }) => display !== 'swap')),
    ).toEqual([]);
    expect(asked.length).toBeGreaterThan(4);
    expect(asked.length).toBeLessThanOrEqual(15);
    // Only what one packet holds is not worth compressing.
    expect(bare.filter((url) => !url.includes('rolldown-runtime'))).toEqual([]);
    await close();
  });
});

describe('the first screen', () => {
  it('is clean by axe, before a tap and after', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      const { page, close } = await workshop.visit({ viewport: phone, colorScheme });
      await page.goto(workshop.base);
      await page.waitForSelector('[data-cell]');
      expect(await axeFindings(page), colorScheme).toEqual([]);
      await close();
    }
    const { page, close } = await workshop.visit({ viewport: phone });
    await page.goto(workshop.base);
    await tapCard(page);
    await page.waitForSelector('.answer-cut');
    await openAll(page);
    expect(await axeFindings(page)).toEqual([]);
    await close();
  });
});

describe('every screen', () => {
  let made: Made;
  beforeAll(async () => {
    made = await oneOfEverything(workshop);
  });
  const screens = () => everyScreen(made);

  it.each(['light', 'dark'] as const)(
    'is clean by axe in %s, on phone and desk',
    async (colorScheme) => {
      for (const viewport of [phone, desk]) {
        const { page, complaints, close } = await workshop.visit({ viewport, colorScheme });
        for (const [name, address] of screens()) {
          await page.goto(workshop.base + address);
          await page.waitForLoadState('networkidle');
          await page.locator('h1').waitFor();
          await openAll(page);
          expect(
            await axeFindings(page),
            `${name} ${colorScheme} ${String(viewport.width)}`,
          ).toEqual([]);
        }
        expect(complaints.filter((line) => !line.includes('404'))).toEqual([]);
        await close();
      }
    },
  );

  it.each([
    ['360 × 640', small, 1],
    ['360 × 640 with text twice as large', small, 2],
    ['a phone with text twice as large', phone, 2],
    ['a desk with text twice as large', desk, 2],
  ])(
    'cuts nothing off on %s',
    async (_name, viewport, times) => {
      const { page, close } = await workshop.visit({ viewport });
      const found: string[] = [];
      for (const [name, address] of screens()) {
        await page.goto(workshop.base + address);
        await settled(page);
        await enlargeText(page, times);
        await openAll(page);
        await page.waitForTimeout(150);
        const sideways = await overflow(page);
        if (sideways > 0) found.push(`${name}: scrolls sideways by ${String(sideways)} px`);
        found.push(...(await cutOff(page)).map((what) => `${name}: ${what}`));
      }
      expect(found).toEqual([]);
      await close();
    },
    120_000,
  );

  it.each([
    ['1440 × 900', { width: 1440, height: 900 }],
    ['1920 × 1080', { width: 1920, height: 1080 }],
  ])(
    'uses the width of %s, and reads from left to right as from top to bottom',
    async (_name, viewport) => {
      const { page, close } = await workshop.visit({ viewport });
      const withTwo = ['bed', 'take', 'new sheet', 'entry', 'run', 'machine', 'trouble'];
      for (const [name, address] of screens().filter(([screen]) => withTwo.includes(screen))) {
        await page.goto(workshop.base + address);
        await settled(page);
        const boxes = await page.$$eval('.beside-part', (parts) =>
          parts.map((part) => {
            const { left, right, top } = part.getBoundingClientRect();
            return { left, right, top };
          }),
        );
        const [first, second] = boxes;
        expect(boxes.length, name).toBe(2);
        expect(second?.top, name).toBe(first?.top);
        expect(second?.left, name).toBeGreaterThan(first?.right ?? Number.NaN);
        const used = ((second?.right ?? 0) - (first?.left ?? 0)) / viewport.width;
        expect(used, name).toBeGreaterThan(0.7);
        expect(await overflow(page), name).toBeLessThanOrEqual(0);
      }
      await close();
    },
  );

  it('fits from 360 px to 4k without scrolling sideways', async () => {
    for (const viewport of [small, huge]) {
      const { page, close } = await workshop.visit({ viewport });
      for (const [name, address] of screens()) {
        await page.goto(workshop.base + address);
        await settled(page);
        await openAll(page);
        expect(await overflow(page), `${name} at ${String(viewport.width)}`).toBeLessThanOrEqual(0);
      }
      await close();
    }
  });
});

describe('a tap', () => {
  it('is painted in the next picture, whether or not the answer is behind, which then catches up', async () => {
    const { page, close } = await workshop.visit({ viewport: phone });
    const taps = await tapThrough(page, workshop.base);
    expect(taps.length).toBeGreaterThan(20);
    expect(taps.filter(({ isPainted }) => !isPainted)).toEqual([]);
    // The answer is worked out beside the page, not before its paint. How long both take is the bench's.
    expect(taps.some(({ isBehind }) => isBehind)).toBe(true);
    await close();
  });
});
