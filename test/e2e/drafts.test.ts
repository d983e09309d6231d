import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { cellsOn, desk, openAll, phone, tapCard } from './page.ts';
import { putSheet } from './sheets.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

interface Filled {
  /** What is tapped before it is there to be typed into. */
  readonly behind?: string;
  readonly label: string;
  readonly typed: string;
  /** What the field shows once it is left; absent: as typed. */
  readonly shown?: string;
}

let study = '';
let entry = '';

/** Forms by the address that they stand at, and what is typed into each. */
const forms = (): readonly (readonly [string, readonly Filled[]])[] => [
  [
    '/sheets/new',
    [
      { label: 'Material', typed: 'birch plywood' },
      { label: 'Batch, if you keep them apart', typed: 'May' },
      { label: 'Speed', typed: '14', shown: '14\u202fmm/s' },
      { label: 'Power setting', typed: '34', shown: '34\u202f%' },
    ],
  ],
  [
    '/sheets/run',
    [
      { label: 'Material', typed: 'poplar plywood' },
      { label: 'Speed', typed: '11', shown: '11\u202fmm/s' },
      { label: 'Parts cut', typed: '120' },
      { label: 'Needed a knife', typed: '3' },
    ],
  ],
  [
    '/cards/describe',
    [
      { label: 'Material', typed: 'alder' },
      { label: 'Speeds', typed: '8, 10, 12', shown: '8, 10, 12\u202fmm/s' },
      { label: 'Power settings', typed: '42', shown: '42\u202f%' },
    ],
  ],
  [`${study}/sheet`, [{ label: 'Batch, if you keep them apart', typed: 'June' }]],
  [
    `${study}/card`,
    [
      { label: 'Power setting you run', typed: '46', shown: '46\u202f%' },
      // Half of a setting: its speed is still to come.
      { label: 'Power setting', typed: '12', shown: '12\u202f%' },
      { behind: 'a new one', label: 'Batch, if you keep them apart', typed: 'July' },
    ],
  ],
  [
    `/compare?sheet=${study.replace('/study/', '')}`,
    [{ label: 'Call the first', typed: 'old lens' }],
  ],
  [
    entry,
    [
      { label: 'Parts cut', typed: '200' },
      { label: 'Not through', typed: '2' },
      { label: 'Name of the new batch', typed: 'autumn' },
    ],
  ],
  [`${entry}/prove`, [{ label: 'Passes', typed: '2' }]],
  [
    '/machine',
    [
      { label: 'Name of another machine', typed: 'the small one' },
      { label: 'Meter readings', typed: '20 % 5.3 mA\n30' },
    ],
  ],
  ['/book', [{ label: 'Search: material, thickness, or the code on a label', typed: 'birch' }]],
  ['/machine/motion', [{ label: 'Acceleration', typed: '3000', shown: '3000\u202fmm/s²' }]],
  ['/machine/meter', [{ label: 'Water temperature', typed: '19', shown: '19\u202f°C' }]],
];

const settled = async (page: Page): Promise<void> => {
  await page.locator('h1').waitFor();
  await page.waitForFunction(() => document.querySelector('main [aria-busy="true"]') === null);
  await page.waitForTimeout(300);
  await openAll(page);
};

const field = (page: Page, label: string) => page.getByLabel(label, { exact: true }).first();

describe.each([
  ['a phone', phone],
  ['a desk', desk],
])('a form on %s', (where, viewport) => {
  beforeAll(async () => {
    const { page, close } = await workshop.visit({ viewport });
    await page.goto(`${workshop.base}/cards/describe`);
    await page.getByLabel('Material').fill(`birch ${where}`);
    await page.getByLabel('Speeds', { exact: true }).fill('8, 10, 12, 14, 16, 18, 20');
    await page.getByRole('button', { name: 'Read it' }).click();
    await tapCard(page);
    await page.getByRole('button', { name: /^Keep .* in the book$/ }).click();
    await page.getByRole('link', { name: 'Open it' }).click();
    await page.getByText('Came from').waitFor();
    entry = new URL(page.url()).pathname;
    await page.goBack();
    study = new URL(page.url()).pathname.split('/card/')[0] ?? '';
    await close();
  });

  it('keeps what was typed over a reload, and over going away and back', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport });
    for (const [address, filled] of forms()) {
      await page.goto(workshop.base + address);
      await settled(page);
      for (const { behind, label, typed } of filled) {
        if (behind !== undefined) {
          await page.getByText(behind, { exact: true }).click();
          await openAll(page);
        }
        await field(page, label).fill(typed);
        await field(page, label).blur();
      }
      const holds = async (after: string): Promise<void> => {
        await settled(page);
        for (const { label, typed, shown = typed } of filled)
          expect(await field(page, label).inputValue(), `${address} ${label} ${after}`).toBe(shown);
      };
      await holds('at once');
      await page.reload();
      await holds('after a reload');
      await page.getByRole('link', { name: 'Book' }).first().click();
      await page.waitForURL(`${workshop.base}/book`);
      await page.goBack();
      await holds('after going away and back');
    }
    expect(complaints).toEqual([]);
    await close();
  }, 240_000);

  it('keeps what a shape was really cut at while it is typed, until it is said', async () => {
    const { page, close } = await workshop.visit({ viewport });
    const { id } = await putSheet(workshop.base);
    await page.goto(`${workshop.base}/study/${id}`);
    const [cell] = await cellsOn(page);
    await page.locator(`[data-cell="${cell?.id ?? ''}"]`).focus();
    await page.getByRole('button', { name: 'Cut at another setting?' }).click();
    const speed = page.getByLabel('Speed as cut');
    await speed.fill('9.5');
    await page.reload();
    expect(await speed.inputValue()).toBe('9.5\u202fmm/s');
    await page.getByRole('link', { name: 'Book' }).first().click();
    await page.waitForURL(`${workshop.base}/book`);
    await page.goBack();
    expect(await speed.inputValue()).toBe('9.5\u202fmm/s');
    await page.getByRole('button', { name: 'Correct it' }).click();
    await page.getByText('9.5 mm/s').first().waitFor();
    await page.reload();
    await cellsOn(page);
    expect(await speed.count()).toBe(0);
    await close();
  });

  it('is sent by Enter, and begins anew when it was', async () => {
    const { page, close } = await workshop.visit({ viewport });
    await page.goto(`${workshop.base}/sheets/run`);
    await page.getByLabel('Material').fill('lime plywood');
    await page.getByLabel('Speed', { exact: true }).fill('12');
    await page.getByText('nearly always', { exact: true }).click();
    await page.getByLabel('Power setting', { exact: true }).fill('30');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/study\//);
    await page.goto(`${workshop.base}/sheets/run`);
    expect(await page.getByLabel('Material').inputValue()).toBe('');

    await page.goto(`${workshop.base}/cards/describe`);
    await page.getByLabel('Material').fill('maple');
    await page.getByLabel('Speeds', { exact: true }).fill('5, 6, 7');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/card\//);

    await page.goto(`${workshop.base}${study}/card`);
    await page.getByLabel('Power setting you run').fill('33');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/machine$/);

    await page.goto(`${workshop.base}/machine`);
    await page.getByLabel('Name of another machine').fill(`the one of ${where}`);
    await page.keyboard.press('Enter');
    await page
      .getByRole('radio', { name: `the one of ${where}` })
      .first()
      .waitFor({ state: 'attached' });
    await close();
  }, 120_000);
});
