import { text } from 'node:stream/consumers';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { desk, findingsInEveryLook, phone } from './page.ts';
import { storedStudy } from './sheets.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

/** Thirty rings in rows. */
const ringsOfOneSheet = `<svg xmlns="http://www.w3.org/2000/svg" width="180mm" height="150mm" viewBox="0 0 180 150">${Array.from(
  { length: 30 },
  (_, i) => {
    const [x, y] = [5 + 28 * (i % 6), 5 + 28 * Math.floor(i / 6)];
    return `<path d="M${String(x)} ${String(y)}h20v20h-20zM${String(x + 6)} ${String(y + 6)}h8v8h-8z" fill="none" stroke="#f00"/>`;
  },
).join('')}</svg>`;

const send = (path: string, method: string, body: unknown): Promise<Response> =>
  fetch(`${workshop.base}${path}`, {
    method,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });

/** A sheet with what is run now, put there as another phone would. */
const putSheet = async (id: string): Promise<void> => {
  const stock = { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };
  const habit = { powerPct: 34, speedMmPerS: 12, comesOut: 'always' };
  const started = await send('/api/studies', 'POST', { id, stock, habit, ask: { powerPct: 34 } });
  expect(started.status).toBe(200);
};

const speedOf = async (page: Page): Promise<number> => {
  const said = await page.locator('.order-speed').textContent();
  return Number(/[\d.]+/.exec(said ?? '')?.[0]);
};

const startOrder = async (page: Page, id: string): Promise<void> => {
  await page.goto(`${workshop.base}/study/${id}`);
  await page.getByRole('link', { name: 'Start an order' }).click();
  await page.getByLabel('Good parts wanted').fill('150');
  await page.getByLabel('Length of cut of one part').fill('180 mm');
  await page.getByLabel('Length of cut of one part').press('Tab');
  await page.getByRole('button', { name: 'Start the order' }).click();
};

/** Counts one sheet, in two taps where all came out. */
const count = async (page: Page, sheet: number, notOut: number): Promise<void> => {
  if (notOut === 0) await page.locator('.order-all').click();
  else {
    await page.getByRole('button', { name: 'Not all out' }).click();
    for (let n = 0; n < notOut; n += 1)
      await page
        .getByRole('button', { name: /Not through$/ })
        .last()
        .click();
    await page.getByRole('button', { name: /^Count it/ }).click();
  }
  await page.locator('.order-which', { hasText: `Sheet ${String(sheet + 1)}` }).waitFor();
};

describe('an order cut sheet by sheet', () => {
  it('goes from its start to its last part on a phone, through a bad sheet and a killed server', async () => {
    await putSheet('whole');
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    await startOrder(page, 'whole');
    await page.locator('.order-all:enabled').waitFor();
    expect(await findingsInEveryLook(page, 'sheet by sheet, first')).toEqual([]);
    const first = await speedOf(page);
    await count(page, 1, 0);
    const second = await speedOf(page);
    expect(second).toBeGreaterThanOrEqual(first);
    await count(page, 2, 0);
    await workshop.killServer();
    const third = await speedOf(page);
    await count(page, 3, 12);
    // A sheet too bad for luck: what to look at stands before the next setting.
    await page.getByText('Stop: look first').waitFor();
    await page.getByRole('button', { name: 'Looked at it: go on' }).click();
    expect(await speedOf(page)).toBeLessThan(third);
    await workshop.startServer();
    await expect
      .poll(async () => (await storedStudy(workshop.base, 'whole')).tallies.length, {
        timeout: 20_000,
      })
      .toBe(3);
    await page.reload();
    await page.locator('.order-which', { hasText: 'Sheet 4' }).waitFor();
    expect(await findingsInEveryLook(page, 'sheet by sheet, after a bad sheet')).toEqual([]);
    for (let sheet = 4; sheet < 12; sheet += 1) {
      const isOver = page.getByText('All parts are there.');
      const looked = page.getByRole('button', { name: 'Looked at it: go on' });
      await isOver.or(looked).or(page.locator('.order-all:enabled')).first().waitFor();
      if (await isOver.isVisible()) break;
      if (await looked.isVisible()) await looked.click();
      await page.locator('.order-all:enabled').click();
      await isOver
        .or(page.locator('.order-which', { hasText: `Sheet ${String(sheet + 1)}` }))
        .first()
        .waitFor();
    }
    await page.getByText('All parts are there.').waitFor();
    expect(await findingsInEveryLook(page, 'sheet by sheet, done')).toEqual([]);
    const { orders, tallies } = await storedStudy(workshop.base, 'whole');
    const good = tallies.reduce((sum, { out, hangs }) => sum + out + hangs, 0);
    expect(good).toBeGreaterThanOrEqual(150);
    expect(tallies.every(({ orderId }) => orderId === orders?.[0]?.id)).toBe(true);
    expect(tallies.every(({ foretold }) => foretold !== undefined)).toBe(true);
    // The browser's own word that the server was away meanwhile.
    expect(
      complaints.filter((said) => !/Failed to load resource|ERR_CONNECTION/.test(said)),
    ).toEqual([]);
    await close();
  });

  it('counts on the picture of the drawing, and writes the drawing with the sheet’s setting', async () => {
    await putSheet('drawn');
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    await page.goto(`${workshop.base}/study/drawn/order`);
    await page.getByLabel('Drawing of one sheet').setInputFiles({
      name: 'rings.svg',
      mimeType: 'image/svg+xml',
      buffer: Buffer.from(ringsOfOneSheet),
    });
    await page.getByText('30 parts, the longest with 112').waitFor();
    await page.getByRole('button', { name: 'Start the order' }).click();
    await page.locator('.order-all:enabled').waitFor();
    await page.getByText('Put this sheet’s settings into your drawing').click();
    await page.getByLabel('Drawing of one sheet').setInputFiles({
      name: 'rings.svg',
      mimeType: 'image/svg+xml',
      buffer: Buffer.from(ringsOfOneSheet),
    });
    const speed = await speedOf(page);
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'SVG', exact: true }).click();
    const saved = await text(await (await saving).createReadStream());
    expect(saved).toContain(
      `A ${Number.isInteger(speed) ? speed.toFixed(1) : String(speed)}mmps 34pct`,
    );
    await page.getByRole('button', { name: 'Not all out' }).click();
    await page.getByRole('button', { name: 'Part 8: Out' }).click();
    await page.getByRole('button', { name: 'Part 21: Out' }).click();
    await page.getByRole('button', { name: 'Part 21: Knife' }).click();
    expect(await findingsInEveryLook(page, 'sheet by sheet, picture')).toEqual([]);
    await page.getByRole('button', { name: 'Count it: 28 of 30 out' }).click();
    await page.locator('.order-which', { hasText: 'Sheet 2' }).waitFor();
    await expect
      .poll(async () => (await storedStudy(workshop.base, 'drawn')).tallies[0], { timeout: 10_000 })
      .toMatchObject({ out: 28, hangs: 1, stays: 1, partLengthMm: 112 });
    expect(complaints).toEqual([]);
    await close();
  });

  it('mends a mistyped count where it stands, and the next setting follows it', async () => {
    await putSheet('mended');
    const { page, close } = await workshop.visit({ viewport: desk });
    await startOrder(page, 'mended');
    await page.locator('.order-all:enabled').waitFor();
    await count(page, 1, 0);
    const before = await speedOf(page);
    await page.getByRole('button', { name: 'Correct this count' }).click();
    await page.getByLabel('Not through').fill('9');
    await page.getByRole('button', { name: 'Save the count' }).click();
    await page.getByRole('button', { name: 'Looked at it: go on' }).click();
    await expect.poll(() => speedOf(page)).toBeLessThan(before);
    await expect
      .poll(async () => (await storedStudy(workshop.base, 'mended')).tallies[0], {
        timeout: 10_000,
      })
      .toMatchObject({ stays: 9 });
    const [tally] = (await storedStudy(workshop.base, 'mended')).tallies;
    expect(tally?.orderId).toBeDefined();
    expect(tally?.sheet).toContain('sheet 1');
    await close();
  });
});
