import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFindings, desk, phone, picture, readFirstCard } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

/** Names a sheet and reads its first card. */
const readACard = async (page: Page): Promise<void> => {
  await readFirstCard(page, workshop.base);
  await page.waitForSelector('.answer-cut');
};

const saved = async (page: Page, name: string): Promise<string> => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name, exact: true }).click(),
  ]);
  return readFileSync(await download.path(), 'utf8');
};

/** Taps the cells of a place, each so often: once for out, twice for hangs, thrice for stays. */
const tapPlace = async (page: Page, place: string, taps: readonly number[]): Promise<void> => {
  const cells = page.getByRole('group', { name: place }).locator('[data-corner]');
  for (const [i, count] of taps.entries()) {
    for (let n = 0; n < count; n += 1) await cells.nth(i).click();
  }
};

describe('the four corners of the bed', () => {
  it('are drawn from the machine’s screen, tapped, and answered', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: desk });
    await readACard(page);
    await page.goto(`${workshop.base}/machine`);
    await page.getByRole('link', { name: 'Four corners' }).click();
    await page.getByRole('img', { name: /^The bed from above.*16 shapes/ }).waitFor();

    // Figure by figure, as a person types: the form does not take the caret away.
    const speed = page.getByRole('group', { name: 'Setting' }).getByLabel('Speed', { exact: true });
    await speed.focus();
    await page.keyboard.type('14.5');
    expect(await speed.inputValue()).toBe('14.5');

    const svg = await saved(page, 'SVG');
    expect(svg).toContain('width="600mm" height="400mm"');
    expect(svg.match(/id="cell-/g)).toHaveLength(16);
    expect(svg).toMatch(/<desc>.*Never leave the machine/);
    const gcode = await saved(page, 'G-code');
    expect(gcode).toContain('(Throughcut four corners, 600 x 400 mm)');
    expect(gcode.match(/\((?:FL|FR|BL|BR)\d .*mm\/s/g)).toHaveLength(16);

    await tapPlace(page, 'Front left', [1, 1, 1, 1]);
    await page.getByText('Read at least one shape at each place first.').waitFor();
    await tapPlace(page, 'Front right', [1, 1, 1, 2]);
    await tapPlace(page, 'Back left', [1, 1, 1, 1]);
    await tapPlace(page, 'Back right', [3, 3, 3, 3]);
    await page.getByText(/^Back right is weak: 9\d % sure/).waitFor();
    expect(await page.getByText('What to look at, in this order').count()).toBe(1);
    expect(await axeFindings(page)).toEqual([]);
    await picture(page, 'corners-desk');

    await tapPlace(page, 'Back right', [2, 2, 2, 2]); // not read again, then out
    await page.getByText('nothing tells the places apart').waitFor({ state: 'hidden' });
    expect(await page.getByText('Back right is weak').count()).toBe(0);

    // Kept with its date, it stands in the list, there again after the page was left; and can be removed.
    await tapPlace(page, 'Back right', [2, 2, 2, 2]);
    const keep = page.getByRole('button', { name: 'Keep it' });
    await keep.click();
    await page.getByText('Kept, with today’s date.').waitFor();
    expect(await keep.isDisabled()).toBe(true);
    await page.reload();
    const kept = page.locator('.earlier li');
    await kept.getByText(/^16 shapes, /).waitFor();
    expect(await kept.count()).toBe(1);
    expect(await axeFindings(page)).toEqual([]);
    await picture(page, 'corners-desk-kept');
    await page.setViewportSize(phone);
    await picture(page, 'corners-phone');
    await kept.getByRole('button', { name: 'Remove' }).click();
    await kept.getByRole('button', { name: 'Yes' }).click();
    await page.getByText('None of this machine yet.').waitFor();
    expect(complaints).toEqual([]);
    await close();
  });

  it('are clean by axe in the dark on a phone', async () => {
    const { page, close } = await workshop.visit({ viewport: phone, colorScheme: 'dark' });
    await page.goto(`${workshop.base}/machine/corners`);
    await page.getByRole('heading', { name: 'What fell out?' }).waitFor();
    expect(await axeFindings(page)).toEqual([]);
    await picture(page, 'corners-phone-dark');
    await close();
  });
});
