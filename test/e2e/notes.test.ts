import { expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { readCardOf } from '../samples/earlier.ts';
import { axeFindings, desk, overflow, phone, picture } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

const ask = async (path: string, body: object, method = 'POST'): Promise<void> => {
  const reply = await fetch(`${workshop.base}${path}`, {
    method,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  expect(reply.status, path).toBe(200);
};

/** Opens what stands below a title, fills the one field in it, and keeps it. */
const say = async (page: Page, title: string, text: string): Promise<void> => {
  const fold = page.locator('details', { has: page.getByText(title, { exact: true }) });
  if ((await fold.getAttribute('open')) === null)
    await fold.getByText(title, { exact: true }).click();
  await fold.getByRole('textbox').fill(text);
  await fold.getByRole('button', { name: 'Keep it' }).click();
};

it('notes and names are written, found by a search, changed and taken away', async () => {
  const stock = { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [3] };
  await ask('/api/studies', { id: 's1', stock, ask: { powerPct: 30 } });
  const { card, events } = readCardOf('EAAA', 1);
  await ask('/api/studies/s1/cards', { card });
  await ask('/api/studies/s1/events', { events });
  await ask('/api/book', {
    ...{ id: 'b1', studyId: 's1' },
    setting: { powerPct: 30, speedMmPerS: 14.3, passes: 1 },
  });
  const order = { startedAt: '2031-05-06T07:08:09.000Z', parts: 90, partsPerSheet: 30 };
  await ask(
    '/api/studies/s1/orders/o1',
    { ...order, partLengthMm: 180, wish: 'promise', acceptNotOutOf100: 3, costS: {} },
    'PUT',
  );

  const { page, complaints, close } = await workshop.visit({ viewport: phone });
  await page.goto(`${workshop.base}/study/s1`);
  await say(page, 'Write a note on the sheet', 'Warped at one corner\nfrom the étagère job');
  await page.getByText('from the étagère job').first().waitFor();
  await say(page, 'Write a note on the card', 'cut beside the left rail');
  await page.getByText('cut beside the left rail').first().waitFor();
  expect(await overflow(page)).toBe(0);
  expect(await axeFindings(page)).toEqual([]);
  await picture(page, 'phone-notes');
  await page.setViewportSize(desk);
  await picture(page, 'desk-notes');
  await page.setViewportSize(phone);

  await page.goto(`${workshop.base}/book/b1`);
  await say(page, 'Write a note', 'for the lamps');
  await page.getByText('for the lamps').first().waitFor();
  await picture(page, 'phone-note-of-entry');
  expect(await overflow(page)).toBe(0);
  expect(await axeFindings(page)).toEqual([]);
  await page.goto(`${workshop.base}/study/s1/order`);
  await say(page, 'Give the job a name', 'Keyrings for the fair');
  await page.getByText('Keyrings for the fair').first().waitFor();
  await picture(page, 'phone-name-of-job');
  expect(await overflow(page)).toBe(0);

  // Each is found by its words, whatever else is known of it.
  const sheets = async (text: string): Promise<readonly string[]> => {
    const reply = await fetch(`${workshop.base}/api/studies?text=${encodeURIComponent(text)}`);
    const found = (await reply.json()) as { readonly studies: readonly { readonly id: string }[] };
    return found.studies.map(({ id }) => id);
  };
  for (const words of ['etagere', 'left rail', 'keyrings'])
    await expect.poll(() => sheets(words)).toEqual(['s1']);
  await page.goto(`${workshop.base}/book`);
  await page.getByRole('textbox').first().fill('lamps');
  await page.locator('.book-entry', { hasText: 'for the lamps' }).waitFor();

  // Said anew, too long, and emptied.
  await page.goto(`${workshop.base}/book/b1`);
  const fold = page.locator('details', { hasText: 'Change the note' });
  await fold.getByText('Change the note').click();
  await fold.getByRole('textbox').fill('x'.repeat(4001));
  await page.getByText('The note has 4001 characters; at most 4000 can be kept.').waitFor();
  expect(await fold.getByRole('button', { name: 'Keep it' }).isDisabled()).toBe(true);
  await fold.getByRole('textbox').fill('');
  await fold.getByRole('button', { name: 'Keep it' }).click();
  await page.getByText('Write a note', { exact: true }).waitFor();
  await page.reload();
  await page.getByText('Write a note', { exact: true }).waitFor();
  expect(await page.getByText('for the lamps').count()).toBe(0);
  expect(complaints).toEqual([]);
  await close();
});
