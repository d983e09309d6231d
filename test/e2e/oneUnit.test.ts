import { beforeAll, describe, expect, it } from 'vitest';
import type { UnitChoice } from '../../src/core/units/unitPreference.ts';
import { desk, openAll, phone, readFirstCard } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

/** Figures with a unit that the reader did not choose. What names a unit without a figure is none. */
const foreign: Readonly<Record<UnitChoice, RegExp>> = {
  'mm/s': /\d[\s\u202f](?:mm\/min|in\/s|in\/min|in\b(?! 100)|psi|°F)/,
  'mm/min': /\d[\s\u202f](?:mm\/s(?!²)|in\/s|in\/min|in\b(?! 100)|psi|°F)/,
  'in/s': /\d[\s\u202f](?:mm\b|cm\b|m\b|in\/min|kPa|°C)/,
  'in/min': /\d[\s\u202f](?:mm\b|cm\b|m\b|in\/s(?!²)|kPa|°C)/,
};

let study = '';
let card = '';
let entry = '';

describe.each([
  ['a phone', phone],
  ['a desk', desk],
])('the units that were chosen, on %s', (_where, viewport) => {
  beforeAll(async () => {
    const { page, close } = await workshop.visit({ viewport });
    await readFirstCard(page, workshop.base, '3.1, 3.15, 3.3');
    await page.getByRole('button', { name: /^Keep .* in the book$/ }).click();
    await page.getByRole('link', { name: 'Open it' }).click();
    await page.getByText('Came from').waitFor();
    entry = new URL(page.url()).pathname;
    await page.goBack();
    card = new URL(page.url()).pathname;
    study = card.split('/card/')[0] ?? '';
    await close();
  });

  it.each(['mm/min', 'in/s', 'in/min'] as const)(
    '%s: are the only ones',
    async (choice) => {
      const { page, complaints, close } = await workshop.visit({ viewport });
      await page.goto(`${workshop.base}/machine`);
      await page.getByText(new RegExp(`^\\w+, ${choice},`)).click();
      await page.waitForLoadState('load');
      const seen: string[] = [];
      for (const address of [
        '/bed',
        card,
        `${card}/machine`,
        `${card}/check`,
        `${study}/card`,
        `${study}/sheet`,
        `${study}/describe`,
        `${study}/prove`,
        `/compare?sheet=${study.replace('/study/', '')}`,
        entry,
        `${entry}/label`,
        '/book',
        '/machine',
        '/machine/motion',
        '/machine/focus',
        '/machine/corners',
        '/sheets/new',
        '/sheets/run',
        '/cards/describe',
      ]) {
        await page.goto(workshop.base + address);
        await page.locator('h1').waitFor();
        await page.waitForFunction(
          () => document.querySelector('main [aria-busy="true"]') === null,
        );
        await openAll(page);
        await page.waitForTimeout(300);
        const typed = await page.$$eval('main input', (boxes) =>
          boxes.map((box) => (box instanceof HTMLInputElement ? box.value : '')),
        );
        const lines = [...(await page.locator('main').innerText()).split('\n'), ...typed];
        seen.push(
          ...lines
            .filter((line) => foreign[choice].test(line))
            .map((line) => `${address}: ${line}`),
        );
        if (address.endsWith('/label') || address.endsWith('/machine'))
          expect(lines.join('\n'), address).toContain(`\u202f${choice}`);
      }
      expect(seen).toEqual([]);
      expect(complaints).toEqual([]);
      await close();
    },
    120_000,
  );
});
