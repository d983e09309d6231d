import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openLine, type FaultyLine } from './faultyLine.ts';
import { cellsOn, phone } from './page.ts';
import { cellsSaid, putSheet, removeCard, sendEvents, storedStudy } from './sheets.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();
let line: FaultyLine;
beforeAll(async () => {
  line = await openLine(workshop.base);
});
afterAll(() => line.close());

const openSheet = async (
  page: Page,
  id: string,
  code?: string,
  over = line,
): Promise<readonly string[]> => {
  await page.goto(`${over.base}/study/${id}${code === undefined ? '' : `/card/${code}`}`);
  return (await cellsOn(page)).map((cell) => cell.id);
};

const tap = (page: Page, cell: string | undefined): Promise<void> =>
  page.click(`[data-cell="${cell ?? ''}"]`);

/** The sign is out of sight on a phone while all is well, and is read by screen readers all the same. */
const sign = (page: Page, text: string | RegExp): Promise<void> =>
  page.locator('.shell-sending', { hasText: text }).waitFor({ state: 'attached' });

const another = (page: Page): Promise<Page> => (page.context() satisfies BrowserContext).newPage();

describe('what was tapped, when the server says no', () => {
  // Side by side, each over a line of its own: most of the time goes by between one try to send and the next.
  const refusals = [403, 408, 429, 500, 502, 503];
  const sheets = new Map<number, string>();
  beforeAll(async () => {
    for (const status of refusals) sheets.set(status, (await putSheet(workshop.base)).id);
  });
  it.concurrent.each(refusals)(
    'is kept through %i from whatever stands between, and sent afterwards',
    async (status) => {
      const own = await openLine(workshop.base);
      const id = sheets.get(status) ?? '';
      const { page, close } = await workshop.visit({ viewport: phone });
      const [a, b] = await openSheet(page, id, undefined, own);
      own.fail(/^POST .*\/events/, { status });
      await tap(page, a);
      await tap(page, b);
      await sign(page, /^2 steps kept here/);
      expect(await cellsSaid(workshop.base, id)).toEqual([]);
      await page.reload();
      await sign(page, /^2 steps kept here/);
      own.mend();
      await sign(page, 'All saved');
      expect(await cellsSaid(workshop.base, id)).toEqual([a, b]);
      await close();
      await own.close();
    },
  );

  it('goes on with other sheets where one is always answered 500, and says why', async () => {
    const [bad, good] = [await putSheet(workshop.base), await putSheet(workshop.base)];
    const { page, close } = await workshop.visit({ viewport: phone });
    line.fail(new RegExp(`^POST /api/studies/${bad.id}/events`), { status: 500 });
    const [cell] = await openSheet(page, bad.id);
    await tap(page, cell);
    await sign(page, /^1 step kept here/);
    const [other] = await openSheet(page, good.id);
    await tap(page, other);
    await expect.poll(() => cellsSaid(workshop.base, good.id)).toEqual([other]);
    await page.locator('.shell-trouble').getByText('refused this (500)').waitFor();
    line.mend();
    await sign(page, 'All saved');
    expect(await cellsSaid(workshop.base, bad.id)).toEqual([cell]);
    await close();
  });

  it('loses no good reading to a card that the desk removed, and lets those be put on another', async () => {
    const { id, codes } = await putSheet(workshop.base, { cards: 2 });
    const [first = '', second = ''] = codes;
    const { page, close } = await workshop.visit({ viewport: phone });
    const cells = await openSheet(page, id, first);
    await page.context().setOffline(true);
    for (const cell of cells.slice(0, 5)) await tap(page, cell);
    await page.getByText(`Card ${second}`).click();
    await cellsOn(page);
    await tap(page, cells[6]);
    await page.getByText(`Card ${first}`).click();
    await cellsOn(page);
    await tap(page, cells[7]);
    await removeCard(workshop.base, id, second);
    await page.context().setOffline(false);
    await page.locator('.shell-trouble').getByText('1 step not taken').waitFor();
    expect(await cellsSaid(workshop.base, id)).toEqual([...cells.slice(0, 5), cells[7]]);

    await page.getByRole('link', { name: 'Look at what was not taken' }).click();
    await page.getByRole('heading', { name: 'Not taken', level: 1 }).waitFor();
    await page.getByText(`${cells[6] ?? ''} out`).waitFor();
    await page.reload();
    await page.getByLabel('Put these on another card').selectOption(`${id} ${first}`);
    await page.getByRole('button', { name: 'Send to this card' }).click();
    await page.getByText('Nothing is left here.').waitFor();
    await sign(page, 'All saved');
    expect(await cellsSaid(workshop.base, id)).toEqual([...cells.slice(0, 5), cells[7], cells[6]]);
    await close();
  });

  it('breaks off a request that hangs when the network is back', async () => {
    const { id } = await putSheet(workshop.base);
    const { page, close } = await workshop.visit({ viewport: phone });
    const [a] = await openSheet(page, id);
    line.fail(/^POST .*\/events/, 'hang');
    await tap(page, a);
    await expect.poll(() => line.open(/^POST .*\/events/)).toBe(1);
    line.mend();
    await page.waitForTimeout(1500); // it hangs all the same
    expect(await cellsSaid(workshop.base, id)).toEqual([]);
    await page.evaluate(() => dispatchEvent(new Event('online')));
    await sign(page, 'All saved');
    expect(await cellsSaid(workshop.base, id)).toEqual([a]);
    await close();
  });

  it('waits for no request for ever, and sends other sheets meanwhile', async () => {
    const [slow, quick] = [await putSheet(workshop.base), await putSheet(workshop.base)];
    const { page, close } = await workshop.visit({ viewport: phone });
    line.fail(new RegExp(`^POST /api/studies/${slow.id}/events`), 'hang');
    const [cell] = await openSheet(page, slow.id);
    await tap(page, cell);
    const [other] = await openSheet(page, quick.id);
    await tap(page, other);
    await expect
      .poll(() => cellsSaid(workshop.base, quick.id), { timeout: 30_000 })
      .toEqual([other]);
    line.mend();
    await sign(page, 'All saved');
    expect(await cellsSaid(workshop.base, slow.id)).toEqual([cell]);
    await close();
  });
});

describe('many tabs of one browser', () => {
  it('share one stream of news and none of them hangs; who is first leaves it to the next', async () => {
    const { id } = await putSheet(workshop.base);
    const { page: first, close } = await workshop.visit({ viewport: phone });
    const cells = await openSheet(first, id);
    const others: Page[] = [];
    for (let i = 0; i < 8; i += 1) {
      const page = await another(first);
      await openSheet(page, id);
      others.push(page);
    }
    expect(line.open(/^GET \/api\/live/)).toBe(1);
    const [second, ...rest] = others;
    const last = rest.at(-1);
    if (second === undefined || last === undefined) throw new Error('no tabs');
    await tap(last, cells[0]);
    for (const page of [first, ...others])
      await page.locator(`[data-cell="${cells[0] ?? ''}"][data-state="out"]`).waitFor();
    await first.close();
    await expect.poll(() => line.open(/^GET \/api\/live/)).toBe(1);
    await tap(second, cells[1]);
    for (const page of others)
      await page.locator(`[data-cell="${cells[1] ?? ''}"][data-state="out"]`).waitFor();
    // From elsewhere, so that it comes by the stream alone.
    const at = new Date().toISOString();
    const [code] = (await storedStudy(workshop.base, id)).cards.map((card) => card.code);
    await sendEvents(workshop.base, id, [
      { id: 'from-elsewhere', cardCode: code, at, kind: 'graded', cell: cells[2], grade: 'hangs' },
    ]);
    for (const page of others)
      await page.locator(`[data-cell="${cells[2] ?? ''}"][data-state="hangs"]`).waitFor();
    // The second tab shows its own tap before it is sent: which of the two is stored first is not said, that both are is.
    await expect
      .poll(async () => [...(await cellsSaid(workshop.base, id))].sort())
      .toEqual([cells[0], cells[1], cells[2]].sort());
    await close();
  });

  it('do not wait for what one of them asked and is not answered', async () => {
    const { id, codes } = await putSheet(workshop.base);
    const { page: first, close } = await workshop.visit({ viewport: phone });
    const [cell = ''] = await openSheet(first, id);
    const pages = [first];
    for (let i = 0; i < 3; i += 1) {
      const page = await another(first);
      await openSheet(page, id);
      pages.push(page);
    }
    const asksForSheet = new RegExp(`^GET /api/studies/${id}$`);
    line.fail(asksForSheet, 'hang', 1);
    const at = new Date().toISOString();
    await sendEvents(workshop.base, id, [
      { id: 'for-all', cardCode: codes[0], at, kind: 'graded', cell, grade: 'hangs' },
    ]);
    const shows = (page: Page): Promise<number> =>
      page.locator(`[data-cell="${cell}"][data-state="hangs"]`).count();
    const shown = async (): Promise<number> =>
      (await Promise.all(pages.map(shows))).reduce((sum, one) => sum + one, 0);
    await expect.poll(shown, { timeout: 15_000 }).toBe(3);
    expect(line.open(asksForSheet)).toBe(1);
    await close();
  });

  it('send no older wish over a newer one', async () => {
    const { id } = await putSheet(workshop.base);
    const { page: one, close } = await workshop.visit({ viewport: phone });
    const [cell] = await openSheet(one, id);
    const two = await another(one);
    await openSheet(two, id);
    await tap(one, cell); // something to answer
    line.fail(/^(POST|PATCH) /, { status: 503 });
    const wish = async (page: Page, habit: string): Promise<void> => {
      await page.evaluate(
        ([studyId = '', speed = '']) => {
          const key = `throughcut.waiting.${String(Date.now() * 1000).padStart(17, '0')}.${speed}`;
          const head = { habit: { powerPct: 30, speedMmPerS: Number(speed), comesOut: 'always' } };
          localStorage.setItem(key, JSON.stringify({ kind: 'head', studyId, head }));
        },
        [id, habit],
      );
    };
    await wish(one, '11');
    await one.waitForTimeout(5);
    await wish(two, '12');
    const three = await another(one);
    await openSheet(three, id);
    await tap(two, cell);
    line.mend();
    for (const page of [one, two, three]) await sign(page, 'All saved');
    const sent = line.asked.filter((asked) => asked === `PATCH /api/studies/${id}`);
    expect((await storedStudy(workshop.base, id)).habit?.speedMmPerS).toBe(12);
    expect(sent.length).toBeGreaterThan(1);
    await close();
  });
});
