import { describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { readPhoto } from '../../src/core/photo/readPhoto.ts';
import { decodePhoto } from '../../src/host/decodePhoto.ts';
import { project } from '../../src/num/homography.ts';
import { axeFindings, desk, overflow, phone, picture } from './page.ts';
import { asFile, photograph } from './photos.ts';
import { putSheet, storedStudy } from './sheets.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

const shape = (page: Page, id: string) => page.locator(`[data-photo-cell="${id}"]`);

/** What each shape of the flattened card says. */
const saidOnPhoto = async (page: Page): Promise<ReadonlyMap<string, string>> => {
  await page.locator('[data-photo-cell]').first().waitFor({ timeout: 60_000 });
  return new Map(
    await page.$$eval('[data-photo-cell]', (buttons) =>
      buttons.map((button): [string, string] => [
        button.getAttribute('data-photo-cell') ?? '',
        button.getAttribute('data-state') ?? '',
      ]),
    ),
  );
};

describe('a card read from a photo', () => {
  it.each([
    ['phone', phone],
    ['desk', desk],
  ])('is looked over, corrected once, used, and answered: %s', async (name, viewport) => {
    const { page, complaints, close } = await workshop.visit({ viewport });
    const { id, codes } = await putSheet(workshop.base);
    const [card] = (await storedStudy(workshop.base, id)).cards;
    if (card === undefined) throw new Error('no card');
    const { front, back, grades } = await photograph(card, 7);
    await page.goto(`${workshop.base}/study/${id}/card/${codes[0] ?? ''}`);
    await page.getByRole('link', { name: 'Read it from a photo' }).click();
    await page.getByText('Take the photo after the run').waitFor();
    await page.getByLabel('Photo of the front').setInputFiles(asFile('front.jpg', front));
    await saidOnPhoto(page);
    await page.getByLabel('Photo of the back').setInputFiles(asFile('back.jpg', back));
    await page.getByRole('radio', { name: 'Back' }).waitFor({ timeout: 60_000 });
    const read = await saidOnPhoto(page);
    expect(Object.fromEntries(read)).toEqual(Object.fromEntries(grades));
    await picture(page, `photo read, ${name}`);
    expect(await overflow(page)).toBe(0);
    expect(await axeFindings(page)).toEqual([]);

    // The photograph says out; the person found that it hangs.
    const first = card.cells[0]?.id ?? '';
    await shape(page, first).click();
    expect(await shape(page, first).getAttribute('aria-label')).toBe(`${first}: hangs, by you`);
    await page.getByRole('button', { name: 'Use these readings' }).click();
    await page.waitForSelector('.answer-sentence[aria-busy="false"] .answer-cut');
    await expect
      .poll(async () => (await storedStudy(workshop.base, id)).events.length)
      .toBe(card.cells.length);
    const { events } = await storedStudy(workshop.base, id);
    for (const { id: cell } of card.cells)
      expect(events.find((event) => 'cell' in event && event.cell === cell)).toMatchObject(
        cell === first
          ? { grade: 'hangs', source: 'photo-corrected' }
          : { grade: grades.get(cell), source: 'photo' },
      );
    // Both photographs are kept with the card, small on its page.
    const kept = page.getByRole('img', { name: /photo of its (front|back)$/ });
    await kept.nth(1).waitFor();
    for (const image of await kept.all()) {
      await image.scrollIntoViewIfNeeded();
      await expect
        .poll(() => image.evaluate((one) => (one as HTMLImageElement).naturalWidth))
        .toBeGreaterThan(1000);
    }
    await picture(page, `photos kept, ${name}`);
    expect(await overflow(page)).toBe(0);
    expect(await axeFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Remove the photo of the back' }).click();
    await page.getByRole('button', { name: 'Yes, remove it' }).click();
    await expect.poll(() => kept.count()).toBe(1);
    // Said in one go, taken back in one go.
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText(`0 of ${String(card.cells.length)} shapes read`).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('what is no photograph of the card', () => {
  it('is refused in words, and the next is taken', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    const { id, codes } = await putSheet(workshop.base);
    const [card] = (await storedStudy(workshop.base, id)).cards;
    if (card === undefined) throw new Error('no card');
    const { front } = await photograph(card, 7);
    const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="900" height="900"/>');
    const bomb = Buffer.from(front);
    // The size stands in the start of frame; ITU T.81, B.2.2.
    const frame = bomb.indexOf(Buffer.from([0xff, 0xc0]));
    bomb.writeUInt16BE(60_000, frame + 5);
    bomb.writeUInt16BE(60_000, frame + 7);
    await page.goto(`${workshop.base}/study/${id}/card/${codes[0] ?? ''}/photo`);
    const refused: readonly (readonly [string, Buffer, RegExp])[] = [
      ['drawn.png', svg, /drawn\.png is not a photograph/],
      ['cut.jpg', front.subarray(0, front.length / 2), /cut\.jpg cannot be read to its end/],
      ['bomb.jpg', bomb, /3600 megapixels, more than the 60/],
    ];
    for (const [name, bytes, words] of refused) {
      await page.getByLabel('Photo of the front').setInputFiles(asFile(name, bytes));
      await page.getByRole('alert').filter({ hasText: words }).waitFor({ timeout: 60_000 });
      await page.getByRole('button', { name: 'Other photos' }).click();
    }
    await page.getByLabel('Photo of the front').setInputFiles(asFile('front.jpg', front));
    await saidOnPhoto(page);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('a card that is not found', () => {
  it('is pointed at by its corners, and read there', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    const { id, codes } = await putSheet(workshop.base);
    const [card] = (await storedStudy(workshop.base, id)).cards;
    if (card === undefined) throw new Error('no card');
    // On a sheet of its own colour it has no sides; where it lies is known from the same picture on a dark one.
    const clear = await decodePhoto((await photograph(card, 7)).front, 'clear');
    const toPx = clear.ok ? readPhoto(card, { front: clear.value }).toPx : undefined;
    if (!clear.ok || toPx === undefined) throw new Error('not found');
    const { front } = await photograph(card, 7, [0.62, 0.45, 0.26]);
    await page.goto(`${workshop.base}/study/${id}/card/${codes[0] ?? ''}/photo`);
    await page.getByLabel('Photo of the front').setInputFiles(asFile('front.jpg', front));
    await page.getByRole('alert').filter({ hasText: 'not found' }).waitFor({ timeout: 60_000 });
    const shown = page.getByRole('img', { name: 'The photo of the front' });
    await expect
      .poll(() => shown.evaluate((one) => (one as HTMLCanvasElement).width))
      .toBe(clear.value.widthPx);
    const { widthMm: w, heightMm: h } = card;
    for (const at of [
      [0, h],
      [w, h],
      [w, 0],
      [0, 0],
    ] as const) {
      const box = await shown.boundingBox();
      if (box === null) throw new Error('no picture');
      const [x, y] = project(toPx, at);
      const { widthPx, heightPx } = clear.value;
      await shown.click({
        position: { x: (x / widthPx) * box.width, y: (y / heightPx) * box.height },
      });
    }
    await picture(page, 'corners by hand, phone');
    expect(await axeFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Read it there' }).click();
    expect([...(await saidOnPhoto(page)).keys()]).toHaveLength(card.cells.length);
    await picture(page, 'read by corners, phone');
    expect(complaints).toEqual([]);
    await close();
  });
});
