import { describe, expect, it } from 'vitest';
import { answerText, axeFindings, cellsOn, overflow, phone, picture } from './page.ts';
import { putSheet, storedStudy } from './sheets.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

describe('the edge of what came out', () => {
  it('is graded by who cares for it, and a better one that holds is offered with its price', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    const { id } = await putSheet(workshop.base, { material: 'acrylic' });
    await page.goto(`${workshop.base}/study/${id}`);
    const cells = (await cellsOn(page)).sort((a, b) => a.speed - b.speed);
    const speeds = [...new Set(cells.map(({ speed }) => speed))];
    const [, clearUpTo = 0, , fastestOut = 0] = speeds;
    for (const { id: cell, speed } of cells.filter((one) => one.speed <= fastestOut)) {
      // One tap says that it came out, as ever; the edge is one more for who wants it.
      await page.locator(`[data-cell="${cell}"]`).click();
      await page
        .getByRole('button', { name: speed <= clearUpTo ? 'clear' : 'frosted', exact: true })
        .click();
    }
    await picture(page, 'a phone grading edges');
    expect(await overflow(page)).toBe(0);
    await page.getByRole('button', { name: /^The other \d+ are not through$/ }).click();
    const better = page.getByRole('radio', { name: /Clearest edge that holds/ });
    await better.waitFor();
    const row = page.locator('.steps-row', { hasText: 'Clearest edge that holds' });
    expect(await row.innerText()).toMatch(/in 100 edges clear.*costs [\d.]+\u202fs a part/s);
    await row.click();
    const speed = Number(/([\d.]+)\u202fmm\/s/.exec(await answerText(page))?.[1]);
    expect(speed).toBeLessThanOrEqual(clearUpTo);
    await picture(page, 'a phone preferring the clear edge');
    expect(await overflow(page)).toBe(0);
    expect(await axeFindings(page)).toEqual([]);

    // It is stored as said, and Undo takes an edge back as it does a reading.
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('of 12 shapes read').waitFor();
    const { events } = await storedStudy(workshop.base, id);
    const edges = events.filter(({ kind }) => kind === 'edge');
    expect(edges).toHaveLength(8);
    expect(events.at(-1)).toMatchObject({ kind: 'undone', eventId: edges.at(-1)?.id });
    expect(complaints).toEqual([]);
    await close();
  });
});
