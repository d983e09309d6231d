import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { readCardOf } from '../samples/earlier.ts';
import { phone, picture } from './page.ts';
import { openWorkshop } from './workshop.ts';

/** Settings that a person types by themselves; the same are said at the command line and through HTTP in test/dangers/settings.test.ts. */
const workshop = openWorkshop();

const ask = async (path: string, method: string, body: object): Promise<void> => {
  const reply = await fetch(`${workshop.base}${path}`, {
    method,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  expect(reply.status, path).toBe(200);
};

const machine = { maxPowerPct: 70, speedRangeMmPerS: [1, 100] };
const stock = { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [3] };
const proven = { powerPct: 30, speedMmPerS: 14.3, passes: 1 };

/** A sheet with a card that was read, on a machine kept to 70 %, and a setting of it in the book. */
const makeSheet = async (): Promise<void> => {
  await ask('/api/studies', 'POST', { id: 's1', stock, machine, ask: { powerPct: 30 } });
  for (const [n, code] of ['EAAA', 'EBBB'].entries()) {
    const { card, events } = readCardOf(code, n + 1);
    await ask('/api/studies/s1/cards', 'POST', { card });
    await ask('/api/studies/s1/events', 'POST', { events });
  }
  await ask('/api/book', 'POST', { id: 'b1', studyId: 's1', setting: proven });
};

const type = async (page: Page, label: string, text: string): Promise<void> => {
  const field = page.getByLabel(label, { exact: true }).first();
  await field.fill(text);
  await field.blur();
};

const square =
  '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60"><path stroke="#f00" fill="none" d="M5 5H55V55H5Z"/></svg>';

const beyond = [
  ['that would burn', { speed: '1', power: '59' }, /times the line energy/],
  ['above the machine’s limit', { speed: '14', power: '95' }, /is kept to 70/],
  ['slower than the machine', { speed: '0.1', power: '30' }, /the machine does 1 to 100/],
] as const;

/** Of the reference sheet, which wants no name of a batch; a tap while the page still settles is repeated. */
const strip = async (page: Page, thicknessMm: string): Promise<void> => {
  await page.goto(`${workshop.base}/book/b1`);
  await page.getByText(/^Nothing counted yet/).waitFor();
  const reference = page.getByRole('radio', { name: 'the reference sheet' });
  await expect
    .poll(async () => {
      await page.locator('label').filter({ has: reference }).click();
      return reference.isChecked();
    })
    .toBe(true);
  await type(page, 'Thickness, measured in several places', thicknessMm);
  await page.getByRole('button', { name: 'Make the strip' }).click();
};

it('a setting said by itself is held at the proof, at an order and at the watch', async () => {
  await makeSheet();
  await ask('/api/studies', 'POST', { id: 's2', stock, machine });
  const thin = { ...stock, material: 'paper', nominalThicknessMm: 0.1, thicknessReadingsMm: [] };
  await ask('/api/studies', 'POST', { id: 's3', stock: thin, machine });
  const { page, close } = await workshop.visit({ viewport: phone });
  const refusal = page.getByRole('alert');

  await page.goto(`${workshop.base}/study/s1/prove`);
  // Begun before the drawing is read: what it tells of the part's length, and the answer to that, come in between.
  const speed = page.getByLabel('Speed', { exact: true }).first();
  await speed.focus();
  await page.setInputFiles('input[type=file]', {
    name: 'square.svg',
    mimeType: 'image/svg+xml',
    buffer: Buffer.from(square),
  });
  const result = page.locator('.proof-result');
  await result.waitFor({ timeout: 60_000 });
  await page.getByText(/^The promise .* 200\smm/).waitFor();
  await page.keyboard.type('13.5', { delay: 400 });
  expect(await speed.inputValue()).toBe('13.5');
  for (const [what, { speed: mmPerS, power: pct }, says] of beyond) {
    await type(page, 'Speed', mmPerS);
    await type(page, 'Power setting', pct);
    await refusal.getByText(says).first().waitFor();
    expect(await result.count(), what).toBe(0);
  }
  await type(page, 'Speed', '14');
  await type(page, 'Power setting', '59');
  await result.waitFor();
  await type(page, 'Passes', '9');
  await refusal.getByText(/times the line energy/).waitFor();
  await picture(page, 'a phone proof held back');

  const power = 'Power setting you run';
  const start = page.getByRole('button', { name: 'Start the order' });
  const begin = async (id: string, powerPct: string): Promise<void> => {
    await page.goto(`${workshop.base}/study/${id}/order`);
    await type(page, 'Length of cut of one part', '200');
    await type(page, power, powerPct);
    await start.click();
  };
  await begin('s2', '95');
  await page.getByText(/is above what this machine is allowed, 70/).waitFor();
  expect(await start.count()).toBe(1);
  await picture(page, 'a phone order held back');
  // With a power that the machine may be set to it begins, and says which.
  await type(page, power, '60');
  await start.click();
  await page.getByText(/mm\/s at 60\s%$/).waitFor();
  // Told lower later: no other power is planned in silence.
  await ask('/api/studies/s2', 'PATCH', { machine: { ...machine, maxPowerPct: 40 } });
  await page.reload();
  await refusal.getByText(/is set to 60\s%; the machine is kept to 40/).waitFor();
  expect(await page.locator('.order-act, .order-taps').count()).toBe(0);
  await begin('s3', '34');
  await refusal.getByText(/too strong or too slow for the sheet/).waitFor();
  expect(await page.locator('.order-act, .order-taps').count()).toBe(0);

  await strip(page, '0.3');
  await refusal.getByText(/The cut has .* times the line energy/).waitFor();
  await refusal.getByText(/mm\/s or faster/).waitFor();
  await picture(page, 'a phone strip held back');
  await ask('/api/studies/s1', 'PATCH', { machine: { ...machine, maxPowerPct: 20 } });
  await strip(page, '3');
  await refusal.getByText(/is kept to 20/).waitFor();
  expect(new URL(page.url()).pathname).toBe('/book/b1');
  await close();
}, 180_000);
