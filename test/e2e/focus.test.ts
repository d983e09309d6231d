import { describe, expect, it } from 'vitest';
import { axeFindings, desk, phone, picture } from './page.ts';
import { openWorkshop } from './workshop.ts';

describe.each([
  ['a phone', phone],
  ['a desk', desk],
])('finding the focus on %s', (where, viewport) => {
  const workshop = openWorkshop();

  it('goes from the machine over a ramp and its file to a height that is kept', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport });
    await page.goto(`${workshop.base}/machine`);
    await page.getByRole('link', { name: 'Find the focus on a ramp' }).click();
    await page.getByRole('heading', { level: 1, name: 'Find the focus' }).waitFor();
    await page.getByText(/A ramp must clear the head/).waitFor();

    await page.getByLabel('Height of the block').fill('8 mm');
    await page.getByText(/would leave less than 3\smm below the nozzle/).waitFor();
    await page.getByLabel('Your gauge, or where you believe').fill('7 mm');
    await page.getByRole('button', { name: 'Take a block of 8\u202fmm' }).click();
    expect(await page.getByLabel('Nozzle above the strip').inputValue()).toBe('11\u202fmm');

    await page.getByLabel('What the strip is of').fill('PVC');
    await page.getByText(/The files come when/).waitFor();
    await page.getByLabel('What the strip is of').fill('birch plywood');
    const address = await page.getByRole('link', { name: 'G-code' }).getAttribute('href');
    const program = await fetch(`${workshop.base}${address ?? ''}`).then((reply) => reply.text());
    expect(program).toContain('(A 40 mm/s 15%)');
    const sheet = await page.getByRole('link', { name: 'Sheet (PDF)' }).getAttribute('href');
    const bytes = await fetch(`${workshop.base}${sheet ?? ''}`).then((reply) => reply.text());
    expect(bytes.startsWith('%PDF-')).toBe(true);

    // Only on one side: the ramp missed it.
    await page.getByLabel('Line A begins to show at').fill('60');
    await page.getByLabel('It shows to the high end').first().check();
    await page.getByText(/The ramp missed the focus/).waitFor();
    await page.getByLabel('It shows to the high end').first().uncheck();

    for (const [letter, from, to] of [
      ['A', '18', '92'],
      ['B', '28', '81'],
      ['C', '36', '75'],
    ] as const) {
      await page.getByLabel(`Line ${letter} begins to show at`).fill(`${from} mm`);
      await page.getByLabel(`Line ${letter} fades out at`).fill(`${to} mm`);
    }
    expect(await page.locator('.focus-gap').innerText()).toMatch(
      /nozzle 7\.3\d?\u202fmm above it .*55\u202fmm from the low edge/,
    );
    await page.getByText(/Your gauge of 7\u202fmm is 0\.3\u202fmm too short/).waitFor();
    await picture(page, `${where} focus by fades`);

    await page.getByText('How wide a line is').click();
    const widths = Array.from({ length: 12 }, (_, i) => {
      const at = 10 + 8 * i;
      const wide = 0.15 * Math.hypot(1, (at - 54) / 16) * (1 + 0.02 * ((i % 3) - 1));
      return `${String(at)} mm ${wide.toFixed(3)} mm`;
    });
    await page.getByLabel('Widths along line A').fill(widths.join('\n'));
    await page.getByText(/Depth of focus: over 2\.\d/).waitFor();
    await page.getByLabel('Thickness of the sheet').fill('2 mm');
    await page.getByText(/Into the sheet: half-way, 1\u202fmm below its top/).waitFor();
    await picture(page, `${where} focus by widths`);
    expect(await axeFindings(page)).toEqual([]);

    await page.reload();
    await page.getByText(/Depth of focus/).waitFor();
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText(/above the sheet, by widths/).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });

  it('needs no mouse', async () => {
    const { page, close } = await workshop.visit({ viewport });
    await page.goto(`${workshop.base}/machine/focus`);
    await page.getByLabel('Line A begins to show at').focus();
    for (const keys of ['20 mm', '90 mm']) {
      await page.keyboard.type(keys);
      await page.keyboard.press('Tab');
      await page.keyboard.press('Tab');
    }
    await page.locator('.focus-gap').waitFor();
    for (let i = 0; i < 12; i += 1) {
      const focused = await page.evaluate(() => document.activeElement?.textContent ?? '');
      if (focused === 'Keep it') break;
      await page.keyboard.press('Tab');
    }
    await page.keyboard.press('Enter');
    await page.getByText('Kept, with today’s date.').waitFor();
    await close();
  });
});
