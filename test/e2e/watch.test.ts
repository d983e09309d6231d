import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Grade } from '../../src/core/reading/grade.ts';
import { readCardOf } from '../samples/earlier.ts';
import { desk, findingsInEveryLook, phone } from './page.ts';
import { openWorkshop } from './workshop.ts';

const setting = { powerPct: 30, speedMmPerS: 14.3, passes: 1 };

/** Sends what a person has done on other days. */
const send = async (page: Page, path: string, body: object): Promise<void> => {
  const status = await page.evaluate(
    async ([to, text]) => {
      const headers = { 'content-type': 'application/json' };
      return (await fetch(to, { method: 'POST', headers, body: text })).status;
    },
    [path, JSON.stringify(body)] as const,
  );
  expect(status, path).toBe(200);
};

const keepSetting = async (page: Page): Promise<void> => {
  const stock = {
    material: 'birch plywood',
    nominalThicknessMm: 3,
    thicknessReadingsMm: [3],
    batch: 'spring',
  };
  await send(page, '/api/studies', { id: 's1', stock, ask: { powerPct: 30 } });
  for (const [n, code] of ['EAAA', 'EBBB', 'ECCC'].entries()) {
    const { card, events } = readCardOf(code, n + 1);
    await send(page, '/api/studies/s1/cards', { card: { ...card, batch: 'spring' } });
    await send(page, '/api/studies/s1/events', { events });
  }
  await send(page, '/api/book', { id: 'b1', studyId: 's1', setting });
};

const count = (
  page: Page,
  day: number,
  out: number,
  hangs: number,
  batch?: string,
): Promise<void> =>
  send(page, '/api/book/b1/tallies', {
    id: `t${String(day)}`,
    at: new Date(Date.UTC(2031, 4, 6 + day)).toISOString(),
    out,
    hangs,
    stays: 0,
    spoilt: 0,
    partLengthMm: 60,
    ...(batch === undefined ? {} : { batch }),
  });

/** Taps the strip on the bench as a changeover without scatter would have it. */
const tapStrip = async (page: Page, v50: number): Promise<void> => {
  const cells = await page.$$eval('[data-cell]', (buttons) =>
    buttons.map((button) => ({
      id: button.getAttribute('data-cell') ?? '',
      speed: Number.parseFloat(button.textContent),
    })),
  );
  expect(cells).toHaveLength(6);
  const taps: Readonly<Record<Grade, number>> = { out: 1, hangs: 2, stays: 3 };
  for (const { id, speed } of cells) {
    const grade: Grade = speed < v50 ? 'out' : speed < 1.06 * v50 ? 'hangs' : 'stays';
    for (let n = 0; n < taps[grade]; n += 1) await page.click(`[data-cell="${id}"]`);
  }
};

describe.each([
  ['a phone', phone],
  ['a desk', desk],
])('watching a proven setting on %s', (where, viewport) => {
  const workshop = openWorkshop();

  it('sees orders slip, cuts a strip in the new batch, and tells laser from wood', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport });
    await page.goto(`${workshop.base}/book`);
    await keepSetting(page);
    await page.goto(`${workshop.base}/book/b1`);
    await page.getByRole('heading', { name: 'Does it still hold?' }).waitFor();
    await page.getByText('Nothing counted yet.').waitFor();

    for (let day = 0; day < 9; day += 1) await count(page, day, 198 + (day % 3), 2 - (day % 3));
    await page.reload();
    await page.getByText('On the chart: 9 orders, none beyond its limits.').waitFor();
    expect(await page.locator('.drawn').getAttribute('aria-label')).toMatch(
      /9 counts came out .* all as foreseen/,
    );

    for (const [of, batch, v50] of [
      ['the reference sheet', '', 18.4],
      ['the new batch', 'autumn', 14.6],
    ] as const) {
      await page.getByRole('radio', { name: of }).check({ force: true });
      if (batch !== '') await page.getByLabel('Name of the new batch').fill(batch);
      await page.getByRole('button', { name: 'Make the strip' }).click();
      await page.waitForURL(/\/study\/.*\/card\/.*\/machine/);
      await page.goto(page.url().replace(/\/machine$/, ''));
      await page.waitForSelector('[data-cell]');
      await tapStrip(page, v50);
      await page.waitForTimeout(1500);
      await page.goto(`${workshop.base}/book/b1`);
      await page.locator('.watch-strip').first().waitFor();
    }
    await count(page, 20, 170, 30, 'winter');
    await count(page, 21, 166, 34, 'winter');
    await page.reload();
    await page.getByText(/The chart is beyond its limit/).waitFor();
    expect(await page.locator('.watch-verdict').allInnerTexts()).toEqual(
      expect.arrayContaining([expect.stringMatching(/^(Retune|Cut a card)/), 'As before.']),
    );
    await page.getByRole('heading', { name: 'Laser or wood?' }).waitFor();
    expect(await page.locator('.watch-caution').count()).toBeGreaterThan(0);
    // Another delivery is marked on the chart: by a line and a name, in the key, in the words for whoever does not see it, and
    // in the list.
    const marked = /batch winter, from \S+/;
    const chart = page.locator('.drawn');
    await chart.locator('text', { hasText: 'winter' }).waitFor();
    expect(await chart.locator('.watch-batch').count()).toBeGreaterThan(0);
    expect(await chart.getAttribute('aria-label')).toMatch(marked);
    await page.locator('.watch-key li', { hasText: marked }).waitFor();
    await page.getByText('Count by count').click();
    await page.getByRole('cell', { name: 'Order, batch winter' }).first().waitFor();
    // The next count is of the same delivery unless another is said.
    expect(await page.getByLabel('Batch, if you keep them apart').inputValue()).toBe('winter');
    expect(await findingsInEveryLook(page, `watch from ${where}`)).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  }, 120_000);

  it('asks for a name of the new batch', async () => {
    const { page, close } = await workshop.visit({ viewport, colorScheme: 'dark' });
    await page.goto(`${workshop.base}/book/b1`);
    await page.getByRole('button', { name: 'Make the strip' }).click();
    await page.getByText(/a new batch needs another name/).waitFor();
    expect(await findingsInEveryLook(page, `watch from ${where} without batch`)).toEqual([]);
    await close();
  }, 60_000);
});
