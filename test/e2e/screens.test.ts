import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, desk, openAll, overflow, phone, tapCard } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

/** The screen is drawn, and what it asked for has come. The stream of news stays open, so the network is never idle. */
const settled = async (page: Page): Promise<void> => {
  await page.locator('h1').waitFor();
  await page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null);
  await page.waitForTimeout(250);
};

const small = { width: 360, height: 640 };
const huge = { width: 3840, height: 2160 };

interface Walked {
  readonly study: string;
  readonly card: string;
  readonly entry: string;
}

/** Makes one of everything, so that every screen has something on it. */
const oneOfEverything = async (): Promise<Walked> => {
  const { page, close } = await workshop.visit({ viewport: desk });
  await page.goto(`${workshop.base}/sheets/new`);
  await page.getByLabel('Material').fill('birch plywood');
  await page.getByRole('button', { name: 'Make a card for it' }).click();
  await page.getByRole('button', { name: 'Take it to the machine' }).click();
  await page.getByRole('link', { name: 'It is cut: read it' }).click();
  await tapCard(page);
  await page.getByRole('button', { name: /^Keep .* in the book$/ }).click();
  await page.getByRole('link', { name: 'Open it' }).click();
  await page.getByText('Came from').waitFor();
  const entry = new URL(page.url()).pathname;
  await page.goBack();
  const card = new URL(page.url()).pathname;
  await close();
  return { study: card.split('/card/')[0] ?? '', card, entry };
};

describe('the first view', () => {
  it('comes compressed, in at most 150 kB and 15 requests, and without what it does not need', async () => {
    const { page, close } = await workshop.visit({ viewport: phone });
    const asked: string[] = [];
    const sizes: Promise<number>[] = [];
    const bare: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    page.on('response', (response) => {
      if (!/\/(assets\/.*\.(js|css))?(\?|$)/.test(response.url())) return;
      sizes.push(response.body().then((body) => gzipSync(body).length));
      if (response.headers()['content-encoding'] === undefined) bare.push(response.url());
    });
    await page.goto(workshop.base);
    await page.waitForSelector('[data-cell]');
    await page.waitForTimeout(1500); // whatever else the first view fetches
    const bytes = (await Promise.all(sizes)).reduce((sum, size) => sum + size, 0);
    expect(bytes).toBeGreaterThan(50_000);
    expect(bytes).toBeLessThanOrEqual(150_000);
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
  let made: Walked;
  beforeAll(async () => {
    made = await oneOfEverything();
  });

  const screens = (): [string, string][] => [
    ['bed', '/'],
    ['study', made.card],
    ['card', `${made.study}/card`],
    ['take', `${made.card}/machine`],
    ['sheet', `${made.study}/sheet`],
    ['new sheet', '/sheets/new'],
    ['describe', '/cards/describe'],
    ['check', `${made.card}/check`],
    ['prove', `${made.study}/prove`],
    ['prove a kept one', `${made.entry}/prove`],
    ['entry', made.entry],
    ['label', `${made.entry}/label`],
    ['book', '/book'],
    ['machine', '/machine'],
    ['meter', '/machine/meter'],
    ['focus', '/machine/focus'],
    ['motion', '/machine/motion'],
    ['four corners', '/machine/corners'],
    ['compare', '/compare'],
    ['trouble', '/trouble'],
    ['nowhere', '/nowhere'],
  ];

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
  it('is painted at once, and answered before the thumb has moved on', async () => {
    const { page, close } = await workshop.visit({ viewport: phone });
    await page.goto(workshop.base + '/cards/describe');
    await page.getByLabel('Speeds', { exact: true }).fill('8 to 30 by 1 mm/s');
    await page.getByRole('button', { name: 'Read it' }).click();
    await page.waitForSelector('[data-cell]');
    const median = await page.evaluate(async () => {
      const turn = (): Promise<void> =>
        new Promise((resolve) => {
          requestAnimationFrame(() => setTimeout(resolve, 0));
        });
      const paint: number[] = [];
      const answer: number[] = [];
      for (const [i, cell] of [
        ...document.querySelectorAll<HTMLElement>('[data-cell]'),
      ].entries()) {
        const taps = i > 12 ? 2 : 1;
        for (let n = 0; n < taps; n += 1) {
          const from = performance.now();
          cell.click();
          await turn();
          paint.push(performance.now() - from);
          while (document.querySelector('.answer-sentence[aria-busy="true"]') !== null)
            await turn();
          answer.push(performance.now() - from);
        }
      }
      const middle = (values: number[]): number =>
        values.sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Infinity;
      return { paintMs: middle(paint), answerMs: middle(answer) };
    });
    console.info(
      `tap to paint ${median.paintMs.toFixed(0)} ms, to the answer ${median.answerMs.toFixed(0)} ms`,
    );
    // The aims are 50 and 100 ms on a quiet machine; twice that is allowed while other tests run beside.
    expect(median.paintMs).toBeLessThan(100);
    expect(median.answerMs).toBeLessThan(200);
    await close();
  });
});
