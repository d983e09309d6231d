import { describe, expect, it } from 'vitest';
import { answerText, phone, picture, tapCard } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

describe('who has no card to cut yet', () => {
  it('gets an answer from a habit and an order, is told what it lacks, and goes on from the bed', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    await page.goto(workshop.base);
    await page.getByRole('link', { name: 'I only know what I run' }).click();
    const see = page.getByRole('button', { name: 'See what it promises' });
    await page.getByText('Say what the sheet is of').waitFor();
    expect(await see.isDisabled()).toBe(true);
    await page.getByLabel('Material').fill('birch plywood');
    await page.getByLabel('Speed', { exact: true }).fill('14');
    await page.getByLabel('Power setting', { exact: true }).fill('34');
    await page.getByText('Say whether it comes out, or count an order').waitFor();
    await page.getByLabel('Parts cut').fill('200');
    await page.getByText('Say how long the cut of one part is').waitFor();
    await page.getByLabel('Length of cut of one part').fill('180');
    await page.getByLabel('Needed a knife').fill('2');
    await page.getByText('198 of 200 parts out, 2 knife').waitFor();
    await see.click();
    await page.waitForSelector('.answer-cut');
    await page.getByRole('heading', { level: 1, name: 'What is known so far' }).waitFor();
    const known = await answerText(page);
    await picture(page, 'a phone known so far');

    await page.goto(workshop.base);
    await page.getByText('No card of it yet').waitFor();
    await page.waitForSelector('.answer-cut');
    expect(await answerText(page)).toBe(known);
    await page.getByRole('link', { name: 'Make a card to cut' }).click();
    await page.getByRole('button', { name: 'Take it to the machine' }).click();
    await page.getByRole('link', { name: 'SVG' }).waitFor();
    await page.goto(workshop.base); // the phone was put away while the card is cut
    await page.getByRole('link', { name: 'Files and list for the machine' }).waitFor();
    await page.getByRole('link', { name: 'It is cut: read it' }).click();
    await tapCard(page);
    await page.waitForSelector('.answer-sentence[aria-busy="false"] .answer-cut');
    expect(complaints).toEqual([]);
    await close();
  });

  it('may go back to the facts of a new sheet without making another', async () => {
    const { page, close } = await workshop.visit({ viewport: phone });
    await page.goto(`${workshop.base}/sheets/new`);
    await page.getByLabel('Material').fill('cork');
    await page.getByRole('button', { name: 'Make a card for it' }).click();
    await page.getByRole('button', { name: 'Take it to the machine' }).waitFor();
    await page.goBack();
    await page.getByRole('heading', { level: 1, name: 'The sheet on the bed' }).waitFor();
    expect(await page.getByLabel('Material').inputValue()).toBe('cork');
    await page.goForward();
    await page.getByRole('button', { name: 'Take it to the machine' }).click();
    await page.getByRole('link', { name: 'SVG' }).waitFor();
    // Nor does a card that was made lead back to the form of another.
    await page.goBack();
    await page.getByRole('heading', { level: 1, name: 'The sheet on the bed' }).waitFor();
    await close();
  });
});

describe('figures that cannot be meant', () => {
  it('are asked about, and are never read as others in silence', async () => {
    const { page, close } = await workshop.visit({ viewport: phone });
    await page.goto(`${workshop.base}/sheets/new`);
    const measured = page.getByLabel('Thickness measured');
    await measured.fill('3,1 3,15 3,05');
    await measured.blur();
    expect(await measured.inputValue()).toBe('3.1\u202fmm, 3.15\u202fmm, 3.05\u202fmm');
    await measured.fill('3,1');
    await page.getByText('can be read in two ways').waitFor();
    await page.getByLabel('Thickness on its label').fill('0');
    await page.getByText('It must lie between 0.01 mm and 200 mm').waitFor();
    await page.getByLabel('Speed', { exact: true }).fill('999999');
    await page.getByText('It must lie between 0.05 mm/s and 5000 mm/s').waitFor();

    await page.goto(`${workshop.base}/machine`);
    await page.getByLabel('Fastest speed').fill('0.5');
    await page.getByText('The slowest speed must lie below the fastest').waitFor();
    await close();
  });
});
