import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openAll, phone, picture, tapCard } from './page.ts';
import { putSheet } from './sheets.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

/** How each of these is outlined where the reader's own colours stand: `none` where it is not. */
const outlines = (all: Locator, around?: string): Promise<string[]> =>
  all.evaluateAll(
    (each, part) =>
      each.map((one) => {
        const { outlineStyle, outlineWidth } = getComputedStyle(one, part);
        return outlineStyle === 'none' || outlineWidth === '0px' ? 'none' : outlineStyle;
      }),
    around,
  );

interface OneOf {
  readonly chosen: Locator;
  readonly others: Locator;
  /** What is outlined is not the choice itself but what stands around it. */
  readonly around?: '::after';
}

/** Of each kind of choice: what is chosen is outlined, and nothing else is. */
const hold = async (kind: string, { chosen, others, around }: OneOf): Promise<void> => {
  await chosen.first().waitFor();
  const [yes, no] = [await outlines(chosen, around), await outlines(others, around)];
  expect(yes.length, kind).toBeGreaterThan(0);
  expect(no.length, kind).toBeGreaterThan(0);
  expect(new Set(yes), kind).toEqual(new Set(['solid']));
  expect(new Set(no), kind).toEqual(new Set(['none']));
};

const oneOf = (page: Page, which: string, chosen: string): OneOf => ({
  chosen: page.locator(`${which}${chosen}`),
  others: page.locator(`${which}:not(${chosen})`),
});

describe('the reader’s own colours', () => {
  it('show with an outline what is chosen, in every kind of choice', async () => {
    const { page, close } = await workshop.visit({ viewport: phone });
    await page.emulateMedia({ forcedColors: 'active' });
    await page.goto(workshop.base);
    await tapCard(page);
    await page.waitForSelector('.answer-sentence[aria-busy="false"] .answer-cut');
    await page.getByRole('button', { name: /^Keep .* in the book$/ }).waitFor();

    await hold('a place of the page', oneOf(page, '.shell-place', '[aria-current]'));
    await hold('how a shape came out', oneOf(page, '.strip-grade', '[aria-pressed="true"]'));
    await hold('a shape of the card', {
      ...oneOf(page, '.cell-button', '.cell-button-chosen'),
      around: '::after',
    });
    await hold('the speed to run', oneOf(page, '.steps-choice .steps-row', '[data-selected]'));
    const dots = (row: string): Promise<string[]> =>
      page
        .locator(`.steps-choice .steps-row${row} .choice-dot`)
        .evaluateAll((all) => all.map((dot) => getComputedStyle(dot).backgroundColor));
    const [full, empty] = [await dots('[data-selected]'), await dots(':not([data-selected])')];
    expect(full.length).toBe(1);
    expect(empty).not.toContain(full[0]);
    await picture(page, 'forced-answer');
    await openAll(page);
    await hold('what is asked', oneOf(page, '.choice-option', '[data-selected]'));

    const { id } = await putSheet(workshop.base, { cards: 2 });
    await page.goto(`${workshop.base}/study/${id}`);
    await hold(
      'a card of the sheet',
      oneOf(page, '.card-tabs .strip-way', '[aria-pressed="true"]'),
    );

    await page.goto(`${workshop.base}/cards/describe`);
    await hold('a card of an answer', oneOf(page, '.choice-option', '[data-selected]'));
    await picture(page, 'forced-describe');
    await close();
  });
});
