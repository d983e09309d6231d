import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFindings, desk, phone, picture } from './page.ts';
import { openWorkshop } from './workshop.ts';

/** An invented tube rated 19 mA that fires from 9 % on and reaches its rating at about 64 %. */
const drawsMa = (powerPct: number): number => (powerPct < 9 ? 0 : 3 + 0.29 * (powerPct - 9));

/** What a person would write down: to a tenth, a little off, never twice the same way. */
const written = (powerPct: number, round: number, factor: number): string => {
  const off = [0.1, -0.1, 0, 0.1, 0, -0.1, 0.05][(powerPct * 3 + round * 5) % 7] ?? 0;
  const ma = factor * drawsMa(powerPct);
  return ma === 0 ? '0' : (ma + off).toFixed(1);
};

/** Fills in what the list asks for until it asks for nothing more. */
const readMeter = async (page: Page, factor = 1): Promise<number> => {
  let readings = 0;
  for (let round = 0; round < 60; round += 1) {
    const field = page.locator('.meter-wanted input').filter({ visible: true });
    const labels = await field.evaluateAll((inputs) =>
      inputs.flatMap((input) => {
        const box = input as HTMLInputElement;
        return box.value === '' ? [box.labels?.[0]?.textContent ?? ''] : [];
      }),
    );
    const label = labels.find((each) => each.includes('going up')) ?? labels[0];
    if (label === undefined) return readings;
    if (label === '') continue; // it was just taken away for another list
    const powerPct = Number.parseFloat(/at ([\d.]+)/.exec(label)?.[1] ?? '');
    const text = written(powerPct, label.includes('up') ? 0 : 1, factor);
    await page.getByLabel(label, { exact: true }).fill(text);
    readings += 1;
  }
  throw new Error('the list never ends');
};

describe.each([
  ['a phone', phone],
  ['a desk', desk],
])('reading the meter on %s', (where, viewport) => {
  const workshop = openWorkshop();

  it('leads from the machine to a curve that the machine is told by', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport });
    await page.goto(`${workshop.base}/machine`);
    await page.getByRole('link', { name: 'Read the meter, step by step' }).click();
    await page.getByRole('heading', { level: 1, name: 'Read the meter' }).waitFor();
    await page
      .getByText(/Danger of death/)
      .first()
      .waitFor();
    await page.getByText(/nobody knows where to stop/).waitFor();
    await page.getByLabel('Rated current').fill('19 mA');
    await page.getByLabel('Water temperature').fill('66 F');
    await picture(page, `${where} meter begun`);

    const readings = await readMeter(page);
    expect(readings).toBeLessThanOrEqual(26);
    await page.getByText('Nothing is missing. Keep it.').waitFor();
    const rated = await page.locator('.meter-rated').innerText();
    // At 64 % it is written down a tenth above its rating, and is not fired there a second time.
    expect(rated).toMatch(/^The rated 19\u202fmA is reached at 63(\.\d)?\u202f%/);
    expect(rated).toMatch(/Keep to 6[234]\u202f% or below\./);
    expect(await page.getByText('It begins to fire between').innerText()).toBe(
      'It begins to fire between 8\u202f% and 10\u202f%.',
    );

    await page.getByLabel('Of rated current').fill('40 %');
    expect(await page.getByLabel('Setting', { exact: true }).inputValue()).toMatch(/^2[45]/);
    await page.getByLabel('Current', { exact: true }).fill('25 mA');
    await page.getByText(/25\smA was not reached/).waitFor();
    await page.getByText('Every setting').click();
    await picture(page, `${where} meter read`);
    expect(await axeFindings(page)).toEqual([]);

    await page.reload();
    await page.getByText('Nothing is missing. Keep it.').waitFor();
    await page.getByRole('button', { name: 'Keep it, and use it for the machine' }).click();
    await page.getByText(/Kept, with today’s date/).waitFor();
    await page.goto(`${workshop.base}/machine`);
    expect(await page.getByLabel('Meter readings').inputValue()).toMatch(/^8 % 0 mA\n10 % 3\./);
    expect(complaints).toEqual([]);
    await close();
  });

  it('questions a slip without refusing it, and tells what a lower curve points at', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport });
    await page.goto(`${workshop.base}/machine/meter`);
    await page.getByText('Meterings so far').waitFor();
    await page.getByLabel('Rated current').fill('19 mA');
    await readMeter(page, 0.92);
    await page.getByLabel(/^Current at 42.*going up$/).fill('18.4');
    await page.getByLabel(/^Current at 42.*coming down$/).fill('18.3');
    await page.getByText(/At 42\s% the meter is written down as/).waitFor();
    await page.getByLabel(/^Current at 42.*going up$/).fill(written(42, 0, 0.92));
    await page.getByLabel(/^Current at 42.*coming down$/).fill(written(42, 1, 0.92));
    await page.getByRole('button', { name: 'Keep it only' }).click();

    await page.getByText(/draws .* less than it did/).waitFor();
    await page.getByText('Weaker').click();
    await page.getByText(/points at controller, wiring or supply/).waitFor();
    await picture(page, `${where} meter compared`);
    expect(await axeFindings(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });
});
