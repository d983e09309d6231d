import { describe, expect, it } from 'vitest';
import { answerText, cellsOn, desk } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

describe('with the keyboard alone', () => {
  it('a card is read, corrected, undone, and its setting kept', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: desk });
    await page.goto(workshop.base);
    const cells = await cellsOn(page);
    const speedOf = new Map(cells.map(({ id, speed }) => [id, speed]));
    const median = [...speedOf.values()].sort((a, b) => a - b)[6] ?? 0;
    const focused = () =>
      page.evaluate(() => document.activeElement?.getAttribute('data-cell') ?? '');
    const tabTo = async (isThere: () => Promise<boolean>): Promise<void> => {
      for (let i = 0; i < 60; i += 1) {
        if (await isThere()) return;
        await page.keyboard.press('Tab');
      }
      throw new Error('never reached by Tab');
    };

    await tabTo(async () => (await focused()) !== '');
    // Walk the bricks row by row: right to the end, then down and back to the left.
    const seen = new Set<string>();
    for (let row = 0; row < 6 && seen.size < cells.length; row += 1) {
      for (let n = 0; n < 12; n += 1) {
        const id = await focused();
        if (!seen.has(id)) {
          const speed = speedOf.get(id) ?? 0;
          await page.keyboard.press(speed < median ? 'o' : speed === median ? 'h' : 's');
          seen.add(id);
        }
        await page.keyboard.press('ArrowRight');
        if ((await focused()) === id) break;
      }
      await page.keyboard.press('ArrowDown');
      for (let n = 0; n < 12; n += 1) {
        const id = await focused();
        await page.keyboard.press('ArrowLeft');
        if ((await focused()) === id) break;
      }
    }
    expect([...seen].sort()).toEqual(cells.map(({ id }) => id).sort());
    await page.waitForSelector('.answer-cut');

    const here = await focused();
    await page.keyboard.press('x');
    await page.keyboard.press('Enter'); // the first reason: a glue pocket
    expect(await page.locator(`[data-cell="${here}"]`).getAttribute('data-state')).toBe('spoilt');
    await tabTo(async () => (await focused()) === here).catch(() =>
      page.focus(`[data-cell="${here}"]`),
    );
    await page.keyboard.press('u');
    expect(await page.locator(`[data-cell="${here}"]`).getAttribute('data-state')).not.toBe(
      'spoilt',
    );

    // The sample card is nobody's until somebody says so.
    const says = (text: string) =>
      page.evaluate((wanted) => document.activeElement?.textContent === wanted, text);
    await tabTo(() => says('Yes, keep it as my sheet'));
    await page.keyboard.press('Enter');
    await page
      .getByRole('button', { name: 'Yes, keep it as my sheet' })
      .waitFor({ state: 'detached' });
    await tabTo(() =>
      page.evaluate(() => /^Keep .* in the book$/.test(document.activeElement?.textContent ?? '')),
    );
    await page.keyboard.press('Enter');
    await page.getByText(/kept in the book/).waitFor();
    expect(await answerText(page)).toMatch(/^Cut at/);
    expect(complaints).toEqual([]);
    await close();
  });
});
