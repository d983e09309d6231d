import { describe, expect, it } from 'vitest';
import { findingsInEveryLook, phone } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

const send = async (path: string, body: unknown): Promise<void> => {
  const reply = await fetch(`${workshop.base}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  expect(reply.status).toBe(200);
};

describe('do our promises hold here', () => {
  it('says first that there is nothing, then what the counts say, and gives them away without names', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    await page.goto(`${workshop.base}/book`);
    await page.getByRole('link', { name: 'Do our promises hold here?' }).click();
    await page.getByText('Nothing to hold yet.').waitFor();
    for (const [n, material] of ['birch plywood', 'cast acrylic'].entries()) {
      const id = `s${String(n)}`;
      const stock = { material, nominalThicknessMm: 3, thicknessReadingsMm: [] };
      await send('/api/studies', { id, stock });
      for (let sheet = 0; sheet < 14; sheet += 1) {
        const hangs = sheet % (n === 0 ? 5 : 2) === 0 ? 1 + 2 * n : 0;
        const setting = { powerPct: 34, speedMmPerS: 12 + sheet, passes: 1 };
        const counted = { out: 30 - hangs, hangs, stays: 0, spoilt: 0, partLengthMm: 180 };
        const foretold = { outOf100: 99 - 0.2 * sheet, promisedOutOf100: 97, surePct: 95 };
        await send(`/api/studies/${id}/tallies`, { setting, ...counted, foretold });
      }
    }
    await page.reload();
    await page.getByText(/28 sheets promised 97 in 100/).waitFor();
    await page.getByRole('heading', { name: 'By material' }).waitFor();
    expect(await findingsInEveryLook(page, 'promises')).toEqual([]);
    const given = await (await fetch(`${workshop.base}/api/export/counts.json`)).text();
    expect(given).toContain('"plywood"');
    expect(given).not.toContain('birch');
    expect(complaints).toEqual([]);
    await close();
  });
});
