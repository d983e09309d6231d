import { describe, expect, it } from 'vitest';
import { desk, tapCard } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

describe('whether another card pays', () => {
  it('is said for the order that lies ahead, and turns with its size', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: desk });
    await page.goto(`${workshop.base}/sheets/new`);
    await page.getByLabel('Material').fill('birch plywood');
    await page.getByRole('button', { name: 'Make a card for it' }).click();
    await page.getByRole('button', { name: 'Take it to the machine' }).click();
    await page.getByRole('link', { name: 'It is cut: read it' }).click();
    await tapCard(page, { out: 0.6, through: 0.8 });
    await page.waitForSelector('.answer-sentence[aria-busy="false"] .answer-cut');
    await page.getByRole('button', { name: 'What would another card tell?' }).click();
    const parts = page.getByRole('spinbutton', { name: 'Parts still to cut' });
    await parts.fill('1');
    await page.getByText(/: leave it\./).waitFor();
    await parts.fill('100000');
    await page.getByText(/: cut it\./).waitFor();
    expect(await page.getByRole('button', { name: 'Make this card' }).count()).toBe(1);
    // What was said of the order is still there the next time.
    await page.reload();
    await page.getByRole('button', { name: 'What would another card tell?' }).click();
    await page.getByText(/: cut it\./).waitFor();
    expect(await parts.inputValue()).toBe('100000');
    expect(complaints).toEqual([]);
    await close();
  });
});
