import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { answerText, axeFindings, cellsOn, desk, phone, picture, tapCard } from './page.ts';
import { putSheet, sendEvents, storedStudy } from './sheets.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

/** From a new sheet to its card at the machine: what is not known is said in the card's own question. */
const makeCard = async (page: Page, unknown: string): Promise<void> => {
  await page.goto(`${workshop.base}/sheets/new`);
  await page.getByLabel('Material').fill('birch plywood');
  await page.getByRole('button', { name: 'Make a card for it' }).click();
  await page.getByText(unknown, { exact: true }).click();
  await page.getByRole('img', { name: /as it will be cut/ }).waitFor();
  await picture(page, `card, ${unknown}`);
  await page.getByRole('button', { name: 'Take it to the machine' }).click();
  await page.getByRole('table').waitFor();
};

/** The list to type in: its columns, and a line a letter. */
const typeInList = async (page: Page) => ({
  columns: await page.getByRole('columnheader').allInnerTexts(),
  letters: await page.getByRole('rowheader').allInnerTexts(),
});

/** Whether it is on the screen without scrolling. */
const inView = async (place: Locator): Promise<boolean> => {
  const box = await place.boundingBox();
  const height = place.page().viewportSize()?.height ?? 0;
  return box !== null && box.y >= 0 && box.y + box.height <= height;
};

/** The settings that the cells on the bench name, each once. */
const settingsOn = async (page: Page): Promise<Set<string>> =>
  new Set(
    (await cellsOn(page)).map(({ speed, power, passes }) => [speed, power, passes].join(' ')),
  );

describe('a card that varies speed and power', () => {
  it('is made, typed in by both, read, and answered within the powers that were cut', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    await makeCard(page, 'Speed and power');
    const { columns, letters } = await typeInList(page);
    expect(columns).toEqual(['Letter', 'Speed', 'Power']);
    expect(letters).toHaveLength(9);

    await page.getByRole('link', { name: 'It is cut: read it' }).click();
    const cells = await cellsOn(page);
    expect(cells).toHaveLength(18);
    expect((await settingsOn(page)).size).toBe(letters.length);
    const powers = [...new Set(cells.map(({ power }) => power))].sort((a, b) => a - b);
    expect(powers.length).toBeGreaterThanOrEqual(2);

    await tapCard(page);
    await page.getByText('18 of 18 shapes read').waitFor();
    await page.waitForSelector('.answer-sentence[aria-busy="false"] .answer-cut');
    const power = Number(/([\d.]+)\u202f%/.exec(await answerText(page))?.[1]);
    expect(power).toBeGreaterThanOrEqual(powers[0] ?? Infinity);
    expect(power).toBeLessThanOrEqual(powers.at(-1) ?? 0);
    await picture(page, 'a phone two-way card read');
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('a second card of a sheet', () => {
  it('is taken as cut from the board of the first', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    const { id, codes } = await putSheet(workshop.base);
    await page.goto(`${workshop.base}/study/${id}/card`);
    const same = page.getByRole('radio', { name: `the one of card ${codes[0] ?? ''}` });
    expect(await same.isChecked()).toBe(true);
    await page.getByRole('button', { name: 'Take it to the machine' }).click();
    await page.getByRole('table').waitFor();
    const { cards } = await storedStudy(workshop.base, id);
    expect(cards[1]?.sheet).toBe(`card ${codes[0] ?? ''}`);

    expect(complaints).toEqual([]);
    await close();
  });

  it('has a faster speed beside its answer that may be promised for its own board alone', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    const { id } = await putSheet(workshop.base, { cards: 0 });
    const made = await fetch(`${workshop.base}/api/studies/${id}/cards`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({
        request: {
          powerPct: 30,
          vary: 'speed',
          cellsEach: 4,
          sheetMm: [400, 300],
          rungs: [11, 12, 13, 14, 15, 16, 17, 19].map((speedMmPerS) => ({
            powerPct: 30,
            speedMmPerS,
            passes: 1,
          })),
        },
      }),
    });
    expect(made.ok, await made.clone().text()).toBe(true);
    const [card] = (await storedStudy(workshop.base, id)).cards;
    if (card === undefined) throw new Error('no card');
    const at = new Date().toISOString();
    // All come out below 14 mm/s, every other up to 16, none above.
    const events = card.cells.map((cell) => {
      const speed =
        card.rungs.find(({ letter }) => letter === cell.rung)?.setting.speedMmPerS ?? NaN;
      const out = speed < 14 || (speed < 16 && /[13579]$/.test(cell.id));
      const grade = out ? 'out' : 'stays';
      return { id: cell.id, cardCode: card.code, at, kind: 'graded', cell: cell.id, grade };
    });
    await sendEvents(workshop.base, id, events);
    await page.goto(`${workshop.base}/study/${id}`);
    await page.waitForSelector('.answer-sentence[aria-busy="false"] .answer-cut');
    const before = Number(/([\d.]+)\u202fmm/.exec(await answerText(page))?.[1]);
    await page.getByText(/On the rest of the sheet that the cards were cut from/).waitFor();
    await picture(page, 'a phone one board');
    await page.getByRole('button', { name: 'Promise it for that sheet alone' }).click();
    await expect
      .poll(async () => Number(/([\d.]+)\u202fmm/.exec(await answerText(page))?.[1]))
      .toBeGreaterThan(before);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('a card of one and two passes', () => {
  it('says the passes in the list and beside each cell, and is read', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: desk });
    await makeCard(page, 'Are two passes worth it?');
    const { columns, letters } = await typeInList(page);
    expect(columns).toEqual(['Letter', 'Speed', 'Passes']);

    await page.getByRole('link', { name: 'How a phone gets in' }).click();
    const phones = page.getByRole('heading', { name: 'A phone beside the machine' });
    await expect.poll(() => inView(phones)).toBe(true);
    await page.goBack();

    await page.getByRole('link', { name: 'It is cut: read it' }).click();
    const cells = await cellsOn(page);
    expect(new Set(cells.map(({ passes }) => passes))).toEqual(new Set([1, 2]));
    expect((await settingsOn(page)).size).toBe(letters.length);
    await tapCard(page);
    await page
      .getByText(`${String(cells.length)} of ${String(cells.length)} shapes read`)
      .waitFor();
    await page.waitForSelector('.answer-cut, .answer-none');
    await picture(page, 'a desk passes card read');
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('a card that varies the power in corners', () => {
  it('is made, read, and answered with how little power in corners does; and a part is priced', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: desk });
    await makeCard(page, 'The corner power');
    expect((await typeInList(page)).letters).toHaveLength(6);

    await page.getByRole('link', { name: 'It is cut: read it' }).click();
    await page.waitForSelector('[data-cell]');
    const cells = await page.$$eval('[data-cell]', (buttons) =>
      buttons.map((button) => ({
        id: button.getAttribute('data-cell') ?? '',
        least: Number(/ c([\d.]+)%/.exec(button.textContent)?.[1] ?? '99'),
      })),
    );
    expect(cells.some(({ least }) => least < 99)).toBe(true);
    for (const { id, least } of cells) {
      await page.click(`[data-cell="${id}"]`);
      if (least < 16) await page.click(`[data-cell="${id}"]`);
    }
    await page.getByText('12 of 12 shapes read').waitFor();
    await page.getByText(/^Corner power: \d+.% or more keeps the promise/).waitFor();
    await page.getByText('What a part costs').click();
    await page.getByRole('rowheader', { name: /As recommended/ }).waitFor();
    await picture(page, 'a desk corners card read, and its cost');
    expect(await axeFindings(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('a file held against its card', () => {
  it('has no fault as it was written, and is stopped where a label lies about a cell', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    await makeCard(page, 'The speed');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: 'SVG' }).click(),
    ]);
    const drawing = await readFile(await download.path(), 'utf8');
    const check = async (name: string, text: string): Promise<void> => {
      const file = { name, mimeType: 'image/svg+xml', buffer: Buffer.from(text) };
      await page.getByLabel('SVG, DXF or G-code').setInputFiles(file);
      await page.getByRole('heading', { name }).waitFor();
    };

    await page.getByRole('link', { name: 'Check a file against this card' }).click();
    await check('as-written.svg', drawing);
    await page.getByText('No fault found.').waitFor();
    expect(await page.locator('.notice-stop').count()).toBe(0);
    await picture(page, 'a phone file without fault');

    // Someone types one layer's speed anew: its two cells are no longer what is written beside them.
    const speed = /<title>A ([\d.]+)mmps/.exec(drawing)?.[1] ?? '';
    const mislabelled = drawing
      .replaceAll(`A ${speed}mmps`, 'A 99.0mmps')
      .replaceAll(`A_${speed}mmps`, 'A_99.0mmps');
    expect(mislabelled).not.toBe(drawing);
    await check('mislabelled.svg', mislabelled);
    await page.getByText(/faults? found/).waitFor();
    for (const cell of ['A1', 'A2']) {
      await page
        .locator('.notice-stop')
        .getByText(`Shape ${cell} says ${String(Number(speed))} mm/s`)
        .waitFor();
    }
    expect(await page.getByText(/^Cell B/).count()).toBe(0);
    await picture(page, 'a phone mislabelled file');
    expect(complaints).toEqual([]);
    await close();
  });
});
