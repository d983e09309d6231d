import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { cellsOn, desk, findingsInEveryLook, tapCard } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

/** Designs and reads a card of the sheet that is open, cut as a workshop would find it. */
const readACard = async (page: Page, out: number): Promise<void> => {
  await page.getByRole('button', { name: 'Take it to the machine' }).click();
  await page.getByRole('link', { name: 'It is cut: read it' }).click();
  await tapCard(page, { out, through: out + 0.15 });
  await page.waitForSelector('.answer-cut');
};

/** A sheet with two read cards at the same settings. The path of its screen. */
const twoCards = async (page: Page): Promise<string> => {
  await page.goto(`${workshop.base}/sheets/new`);
  await page.getByLabel('Material').fill('birch plywood');
  await page.getByRole('button', { name: 'Make a card for it' }).click();
  await readACard(page, 0.4);
  const study = new URL(page.url()).pathname.split('/card/')[0] ?? '';
  await page.goto(`${workshop.base}${study}/card`);
  // A second card is taken as cut from the board of the first, unless it is said to be another.
  await page.getByText('a new one', { exact: true }).click();
  await readACard(page, 0.7);
  return study;
};

describe('two conditions', () => {
  it('are compared from the sheet: a sentence, the exact test, and the card that would settle it', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: desk });
    const study = await twoCards(page);
    await page.goto(workshop.base + study);
    await page.getByText('The sheet', { exact: true }).click();
    await page.getByRole('link', { name: 'Compare two conditions' }).click();
    const sentence = page.locator('.compare-sentence');
    await sentence.waitFor();
    expect(await sentence.innerText()).toMatch(/^With the other condition/);
    await page.getByText('Both on one sheet would tell more.').waitFor();

    await page.getByText('The lens', { exact: true }).click();
    await page.getByText('Yes, one sheet').click();
    await page.getByText('Both on one sheet would tell more.').waitFor({ state: 'hidden' });
    await page.getByText(/^With the other lens/).waitFor();
    await page.getByText('The exact test, without a model').click();
    await page
      .getByText(
        /McNemar’s exact test|Fisher’s exact test|No setting was cut|exact test says nothing/,
      )
      .waitFor();
    expect(await findingsInEveryLook(page, 'compare')).toEqual([]);

    const folded = page.getByText('The card to cut for that', { exact: true });
    if ((await folded.count()) > 0) await folded.click();
    const said = await page.innerText('main');
    expect(said).not.toContain('no words yet');
    const asked =
      /make \d+ of (\d+) at each setting/.exec(said)?.[1] ??
      /(\d+) shapes? at each setting/.exec(said)?.[1];
    if (asked === undefined) expect(said).toContain('would not surely tell');
    await page.getByRole('button', { name: 'Make the card for the first lens' }).click();
    await page.getByText(/^For the first lens; its twin for the other lens has/).waitFor();
    const each = page.getByLabel('Shapes at each setting');
    // Where no number of shapes would surely tell, the card takes as many as go on one.
    expect(await each.inputValue()).toBe(String(asked ?? 24));
    expect(await page.getByRole('radio', { name: 'a new one' }).isChecked()).toBe(true);
    await page.getByRole('button', { name: 'Take it to the machine' }).click();
    const twin = /\/card\/(\w{4})\/machine/.exec(page.url())?.[1] ?? '';

    await page.goto(`${workshop.base}/compare?sheet=${study.split('/').at(-1) ?? ''}`);
    await page.getByText('The lens', { exact: true }).click();
    const foldedAgain = page.getByText('The card to cut for that', { exact: true });
    await page.getByText(/would tell a difference|are enough|would not surely tell/).waitFor();
    if ((await foldedAgain.count()) > 0) await foldedAgain.click();
    await page.getByRole('button', { name: 'Make the card for the other lens' }).click();
    await page.getByText(/^For the other lens; its twin for the first lens has/).waitFor();
    expect(await page.getByRole('radio', { name: `the one of card ${twin}` }).isChecked()).toBe(
      true,
    );
    expect(await findingsInEveryLook(page, 'compared-card')).toEqual([]);
    await page.getByRole('button', { name: 'Take it to the machine' }).click();
    await page.getByRole('link', { name: 'It is cut: read it' }).click();
    const settings = new Set(
      (await cellsOn(page)).map(({ speed, power }) => `${String(speed)} ${String(power)}`),
    );
    expect(settings.size).toBeGreaterThanOrEqual(3);
    expect(complaints).toEqual([]);
    await close();
  });
});
