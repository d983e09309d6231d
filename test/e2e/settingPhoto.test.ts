import sharp from 'sharp';
import { expect, it } from 'vitest';
import { readCardOf } from '../samples/earlier.ts';
import { axeFindings, desk, overflow, phone, picture } from './page.ts';
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

it('a photo is kept with a kept setting, still there after a reload, and gone when removed', async () => {
  const stock = { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [3] };
  await ask('/api/studies', { id: 's1', stock, ask: { powerPct: 30 } });
  const { card, events } = readCardOf('EAAA', 1);
  await ask('/api/studies/s1/cards', { card });
  await ask('/api/studies/s1/events', { events });
  const setting = { powerPct: 30, speedMmPerS: 14.3, passes: 1 };
  await ask('/api/book', { id: 'b1', studyId: 's1', setting });
  const buffer = await sharp({
    create: { width: 1200, height: 800, channels: 3, background: '#a86' },
  })
    .jpeg()
    .toBuffer();

  const { page, complaints, close } = await workshop.visit({ viewport: phone });
  await page.goto(`${workshop.base}/book/b1`);
  await page.getByText('Keep a photo with it').click();
  await page.getByText('after the run', { exact: false }).first().waitFor();
  await page.locator('label', { hasText: 'The engraving' }).click();
  const box = page.getByLabel('Choose a photo');
  await box.setInputFiles({ name: 'none.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no') });
  await page.getByText('none.jpg is not a photograph').waitFor();
  await box.setInputFiles({ name: 'fob.jpg', mimeType: 'image/jpeg', buffer });
  const shown = page.getByRole('img', { name: 'Photo of the engraving' });
  await shown.waitFor();
  await page.getByText('Kept.', { exact: true }).waitFor();
  await picture(page, 'phone-setting-photo');
  expect(await overflow(page)).toBe(0);
  expect(await axeFindings(page)).toEqual([]);

  await page.reload();
  await shown.scrollIntoViewIfNeeded();
  await expect
    .poll(() => shown.evaluate((one) => (one as HTMLImageElement).naturalWidth))
    .toBe(1200);
  await page.setViewportSize(desk);
  await picture(page, 'desk-setting-photo');
  expect(await overflow(page)).toBe(0);
  await page.goto(`${workshop.base}/book/b1/marks`);
  await shown.waitFor();
  await page.getByRole('button', { name: 'Remove the photo of the engraving' }).click();
  await page.getByRole('button', { name: 'Yes, remove it' }).click();
  await expect.poll(() => shown.count()).toBe(0);
  await page.reload();
  await page.getByText('Keep a photo with it').waitFor();
  expect(await shown.count()).toBe(0);
  expect(complaints).toEqual([]);
  await close();
});
