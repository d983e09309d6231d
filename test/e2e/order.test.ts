import { describe, expect, it } from 'vitest';
import { findingsInEveryLook, phone, tapCard } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

describe('an order of so many parts', () => {
  it('is foretold under an answer: how many hang, how many to plan, what costs least', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    await page.goto(workshop.base);
    await tapCard(page, { out: 0.7, through: 0.85 });
    await page.waitForSelector('.answer-sentence[aria-busy="false"] .answer-cut');
    await page.getByText('An order of so many parts').click();
    await page.getByText(/^Of 60 parts expect/).waitFor();
    await page.getByRole('rowheader', { name: /Costs least/ }).waitFor();
    const parts = page.getByLabel('An order of … parts');
    await parts.fill('200');
    await parts.press('Enter');
    await page.getByText(/^Of 200 parts expect/).waitFor();
    const plan = await page.getByText(/Plan \d+: then 200 come out/).textContent();
    expect(Number(/Plan (\d+)/.exec(plan ?? '')?.[1])).toBeGreaterThanOrEqual(200);
    expect(await findingsInEveryLook(page, 'order')).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });
});
