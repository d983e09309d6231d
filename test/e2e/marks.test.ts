import { readFileSync } from 'node:fs';
import { beforeAll, expect, it } from 'vitest';
import { asJpeg } from '../../bench/photo/asJpeg.ts';
import { renderStrip } from '../../bench/photo/renderStrip.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { readCardOf } from '../samples/earlier.ts';
import { axeFindings, desk, phone, picture } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

const ask = async (path: string, body: object): Promise<void> => {
  const reply = await fetch(`${workshop.base}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  expect(reply.status, path).toBe(200);
};

/** A kept cut by itself, as `b1`. */
beforeAll(async () => {
  const machine = { maxPowerPct: 70, speedRangeMmPerS: [1, 300] };
  const stock = { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [3] };
  await ask('/api/studies', { id: 's1', stock, machine, ask: { powerPct: 30 } });
  const { card, events } = readCardOf('EAAA', 1);
  await ask('/api/studies/s1/cards', { card });
  await ask('/api/studies/s1/events', { events });
  const setting = { powerPct: 30, speedMmPerS: 14.3, passes: 1 };
  await ask('/api/book', { id: 'b1', studyId: 's1', setting });
});

it('a mark is found with a strip beside a kept cut, kept, and said wherever the cut is', async () => {
  const { page, complaints, close } = await workshop.visit({ viewport: phone });
  await page.goto(`${workshop.base}/book/b1`);
  await page.getByRole('link', { name: 'Score, engrave, tape' }).click();
  const lines = page.getByRole('radiogroup', { name: 'What is it to find?' });
  await lines.waitFor();
  await picture(page, 'phone-marks');
  await page.locator('label', { hasText: 'A line to score' }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'SVG', exact: true }).click(),
  ]);
  expect(readFileSync(await download.path(), 'utf8')).toContain('marks-D');

  const tap = (question: string, step: string) =>
    page
      .getByRole('radiogroup', { name: question })
      .locator('label', { hasText: new RegExp(`^${step}$`) })
      .click();
  await tap('The palest that you see', 'B');
  await tap('The one that you want', 'D');
  const found = (await page.locator('.marks-found').textContent()) ?? '';
  expect(found).toMatch(/mm\/s, \d+\s%/);
  await picture(page, 'phone-marks-found');
  expect(await axeFindings(page)).toEqual([]);
  await page.getByRole('button', { name: 'Keep this score from the strip' }).click();
  await page.getByText('Kept, with today’s date.').waitFor();

  for (const address of ['/book/b1', '/book/wall', '/book/b1/marks']) {
    await page.goto(workshop.base + address);
    await page.getByText(found).first().waitFor();
  }

  // What is seen on a strip of shades gives settings for even ones, and one of them is taken to the form.
  await page.locator('label', { hasText: 'A shade to engrave' }).click();
  await page.getByText('Even shades from it').click();
  const seen = [82, 79, 74, 66, 58, 50, 44, 41];
  for (const [i, lightness] of seen.entries()) {
    await page.getByLabel(`L* of ${'ABCDEFGH'.charAt(i)}`).fill(String(lightness));
    await page.keyboard.press('Tab');
  }
  const shades = page.locator('.marks-shades tbody tr');
  await expect.poll(() => shades.count()).toBe(5);
  await page.getByRole('button', { name: 'Take shade 3' }).click();
  await page.getByText('It stands above now').waitFor();
  const taken = (await shades.nth(2).locator('td').nth(1).textContent()) ?? '';
  expect(taken).toMatch(/mm\/s, \d+\s%/);
  await picture(page, 'phone-marks-shades');
  expect(await axeFindings(page)).toEqual([]);
  expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(390);
  await page.setViewportSize(desk);
  await picture(page, 'desk-marks-shades');
  await page.getByRole('button', { name: 'Keep this engraving', exact: true }).click();
  await page.getByText(taken).first().waitFor();

  // What was read on the strip is kept with it, and stands there again where nothing of this page is left.
  await close();
  const later = await workshop.visit({ viewport: phone });
  await later.page.goto(`${workshop.base}/book/b1/marks`);
  await later.page.getByText('L* of the shades, read with a colour meter: A 82, B 79').waitFor();
  await later.page.getByText('Even shades from it').click();
  await expect.poll(() => later.page.getByLabel('L* of H').inputValue()).toBe('41');
  await expect
    .poll(() =>
      later.page.locator('.marks-shades tbody tr').nth(2).locator('td').nth(1).textContent(),
    )
    .toBe(taken);
  await picture(later.page, 'phone-marks-kept');
  expect(later.complaints).toEqual([]);
  await later.close();
  expect(complaints).toEqual([]);
});

it('the shades of a strip are read from a photo beside white paper, pointed at by four taps', async () => {
  const seen = [72, 66, 60, 54, 48, 42, 36, 30];
  const { picture: photo, corners } = renderStrip(
    {
      ...{ shades: seen, sheet: 78, grain: 0.04, paper: 94, hasPaper: true },
      ...{ sheetTint: [1, 1, 1], lightTint: [1, 0.93, 0.8], falloff: [0.2, -0.2] },
      ...{ exposure: 0.75, gamma: 1, sCurve: 0, noise: 0.03, tilt: 0.05, fingerMm: 1 },
    },
    seededRandom(3),
  );
  const buffer = await asJpeg(photo, 88);
  const { page, complaints, close } = await workshop.visit({ viewport: phone });
  await page.goto(`${workshop.base}/book/b1/marks`);
  await page.getByText('Even shades from it').click();
  await page.locator('label', { hasText: 'From a photo' }).click();
  await page
    .getByLabel('Choose a photo of the shades')
    .setInputFiles({ name: 'shades.jpg', mimeType: 'image/jpeg', buffer });
  const shown = page.getByRole('img', { name: 'The photo of the shades' });
  await expect
    .poll(() => shown.evaluate((canvas: HTMLCanvasElement) => canvas.width))
    .toBe(photo.widthPx);
  const pointAt = async (): Promise<void> => {
    const { width, height } = (await shown.boundingBox()) ?? { width: NaN, height: NaN };
    for (const [x, y] of corners) await shown.click({ position: { x: x * width, y: y * height } });
  };
  await pointAt();
  await page.getByText('4 of 4 signs').waitFor();
  await picture(page, 'phone-marks-photo');
  expect(await axeFindings(page)).toEqual([]);
  await page.getByRole('button', { name: 'Read the shades' }).click();
  await page.getByText('Read from the photo').waitFor();
  for (const [i, lightness] of seen.entries()) {
    const read = await page.getByLabel(`L* of ${'ABCDEFGH'.charAt(i)}`).inputValue();
    expect(Math.abs(Number(read) - lightness)).toBeLessThan(1.5);
  }
  await expect.poll(() => page.locator('.marks-shades tbody tr').count()).toBe(5);
  // What a person puts right is not read over.
  await page.getByLabel('L* of H').fill('33');
  await page.keyboard.press('Tab');
  await page.waitForTimeout(300);
  expect(await page.getByLabel('L* of H').inputValue()).toBe('33');
  await picture(page, 'phone-marks-photo-read');
  expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(390);
  await page.setViewportSize(desk);
  await picture(page, 'desk-marks-photo-read');
  expect(complaints).toEqual([]);
  await close();
});
