import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { cellsOn, desk, phone, picture } from './page.ts';
import { openWorkshop } from './workshop.ts';

/** What a hand does: a click, a tap, a field typed, a choice, each one action. */
class Hand {
  count = 0;

  async press(what: Locator): Promise<void> {
    await what.click();
    this.count += 1;
  }

  async type(into: Locator, text: string): Promise<void> {
    await into.fill(text);
    this.count += 1;
  }
}

/** Reads a card as a first-time reader would: what came out, what hangs, and one button for all that stayed. */
const readCard = async (page: Page, hand: Hand, { out = 0.5, through = 0.7 } = {}) => {
  const cells = (await cellsOn(page)).sort((a, b) => a.speed / a.power - b.speed / b.power);
  for (const [i, { id }] of cells.entries()) {
    const share = i / cells.length;
    const taps = share < out ? 1 : share < through ? 2 : 0;
    for (let n = 0; n < taps; n += 1) await hand.press(page.locator(`[data-cell="${id}"]`));
  }
  await hand.press(page.getByRole('button', { name: /^The (other \d+|last one) / }));
  await page.waitForSelector('.answer-sentence[aria-busy="false"] .answer-cut');
};

describe.each([
  ['a phone', phone],
  ['a desk', desk],
])('the actions of a first-time walk on %s', (where, viewport) => {
  const workshop = openWorkshop();

  it('are at most 13 from a card of the drawer to its answer', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport });
    const hand = new Hand();
    await page.goto(workshop.base);
    await hand.press(page.getByRole('link', { name: 'I have a cut card here' }));
    await hand.type(page.getByLabel('Speeds', { exact: true }), '10, 12, 14, 16, 18, 20');
    await hand.type(page.getByLabel('Power settings'), '40');
    await hand.type(page.getByLabel('Material'), 'birch plywood');
    await picture(page, `${where} walk 1 described`);
    await hand.press(page.getByRole('button', { name: 'Read it' }));
    await readCard(page, hand);
    await picture(page, `${where} walk 2 answered`);
    expect(hand.count).toBeLessThanOrEqual(13);
    expect(complaints).toEqual([]);
    await close();
  });

  it('are at most 25 from a new sheet to the label that is printed', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport });
    await page.addInitScript(() => {
      globalThis.print = () => document.documentElement.setAttribute('data-printed', '');
    });
    const hand = new Hand();
    await page.goto(workshop.base);
    await hand.press(page.getByRole('link', { name: 'I have a new sheet' }));
    await hand.type(page.getByLabel('Material'), 'birch plywood');
    await hand.type(page.getByLabel('Speed', { exact: true }), '14');
    await hand.type(page.getByLabel('Power setting', { exact: true }), '34');
    await hand.press(page.getByText('nearly always'));
    await picture(page, `${where} walk 3 sheet`);
    await hand.press(page.getByRole('button', { name: 'Make a card for it' }));
    await picture(page, `${where} walk 4 card`);
    await hand.press(page.getByRole('button', { name: 'Take it to the machine' }));
    const downloaded = page.waitForEvent('download');
    await hand.press(page.getByRole('link', { name: 'SVG' }));
    await downloaded;
    await picture(page, `${where} walk 5 machine`);
    await hand.press(page.getByRole('link', { name: 'It is cut: read it' }));
    await readCard(page, hand);
    await hand.press(page.getByRole('button', { name: /^Keep .* in the book$/ }));
    await picture(page, `${where} walk 6 kept`);
    await hand.press(page.getByRole('link', { name: 'Label for the shelf' }));
    await page.locator('.label').waitFor();
    await picture(page, `${where} walk 7 label`);
    await hand.press(page.getByRole('button', { name: 'Print' }));
    await page.waitForSelector('[data-printed]', { state: 'attached' });
    expect(hand.count).toBeLessThanOrEqual(25);
    expect(complaints).toEqual([]);
    await close();
  });
});
