import { readFile } from 'node:fs/promises';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openLine, type FaultyLine } from './faultyLine.ts';
import { cellsOn, desk, phone } from './page.ts';
import { runProgram } from './program.ts';
import { cellsSaid, putSheet, sendEvents } from './sheets.ts';
import { openWorkshop } from './workshop.ts';

const sign = (page: Page, text: string | RegExp): Promise<void> =>
  page.locator('.shell-sending', { hasText: text }).waitFor({ state: 'attached' });

const tap = (page: Page, cell: string | undefined): Promise<void> =>
  page.click(`[data-cell="${cell ?? ''}"]`);

/** All parts that the page fetches while nothing else is to be done. */
const partsFetched = async (page: Page): Promise<void> => {
  // The browser remembers 250 fetches unless it is asked for more, and the page has nearly as many parts.
  await page.evaluate(() => performance.setResourceTimingBufferSize(5000));
  const parts = await page.evaluate(async (): Promise<readonly string[]> => {
    const listed: unknown = await (await fetch('/parts.json')).json();
    return Array.isArray(listed) ? listed.map(String) : [];
  });
  expect(parts.length).toBeGreaterThan(50);
  await expect
    .poll(
      () =>
        page.evaluate((all) => {
          const had = new Set(
            performance.getEntriesByType('resource').map(({ name }) => new URL(name).pathname),
          );
          return all.filter((part) => !had.has(part)).length;
        }, parts),
      { timeout: 60_000, interval: 500 },
    )
    .toBe(0);
};

describe('a page whose server has gone', () => {
  const workshop = openWorkshop();
  let line: FaultyLine;
  beforeAll(async () => {
    line = await openLine(workshop.base);
  });
  afterAll(() => line.close());

  it('opens screens that nobody has visited, and is itself again when the server is back', async () => {
    const { id } = await putSheet(workshop.base);
    const { page, close } = await workshop.visit({ viewport: desk });
    await page.goto(`${workshop.base}/study/${id}`);
    const [cell] = await cellsOn(page);
    await partsFetched(page);
    await workshop.killServer();
    for (const place of ['Machine', 'Book']) {
      await page.getByRole('link', { name: place, exact: true }).click();
      await page
        .getByRole('heading', { level: 1, name: place === 'Book' ? 'Book' : 'The machine' })
        .waitFor();
    }
    await page.goBack();
    await page.goBack();
    await tap(page, cell?.id);
    await sign(page, /^1 step kept here/);
    await workshop.startServer();
    await sign(page, 'All saved');
    expect(await cellsSaid(workshop.base, id)).toEqual([cell?.id]);
    await close();
  });

  it('says what it could not fetch, leaves the rest standing, and has it when the server is back', async () => {
    const { page, close } = await workshop.visit({ viewport: desk });
    line.fail(/^GET \/parts\.json/, { status: 404 });
    await page.goto(line.base);
    await page.getByRole('link', { name: 'Book' }).waitFor();
    await page.waitForTimeout(1000);
    await workshop.killServer();
    await page.getByRole('link', { name: 'Book' }).click();
    await page.getByText('This part of the page could not be fetched').waitFor();
    await page.getByText(/The workshop computer does not answer/).waitFor();
    await page.getByRole('button', { name: 'Try again' }).click();
    expect(await page.getByRole('link', { name: 'Machine' }).isVisible()).toBe(true);
    await workshop.startServer();
    await page.getByRole('heading', { level: 1, name: 'Book' }).waitFor();
    line.mend();
    await close();
  });

  it('of an older build says so, and loads the newer one on demand', async () => {
    const { page, close } = await workshop.visit({ viewport: desk });
    // Whoever has this page open asks for parts that a newer build no longer has.
    line.fail(/^GET \/parts\.json/, { status: 404 });
    await page.goto(line.base);
    await page.getByRole('link', { name: 'Book' }).waitFor();
    await page.waitForLoadState('networkidle');
    line.fail(/^GET \/assets\/.*\.js/, { status: 404 });
    await page.getByRole('link', { name: 'Book' }).click();
    await page.getByText('This part of the page could not be fetched').waitFor();
    await page.getByText(/may be newer than this page/).waitFor();
    line.mend();
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.getByRole('heading', { level: 1, name: 'Book' }).waitFor();
    await close();
  });

  it('follows a server that got an older store back, and one that took in a file', async () => {
    const { id, codes } = await putSheet(workshop.base);
    const { page, close } = await workshop.visit({ viewport: phone });
    await page.goto(`${workshop.base}/study/${id}`);
    const [a, b, c] = await cellsOn(page);
    await tap(page, a?.id);
    await sign(page, 'All saved');
    const folder = mkdtempSync(join(tmpdir(), 'throughcut-e2e-'));
    const [backup, exported] = [join(folder, 'backup.sqlite'), join(folder, 'all.json')];
    const environment = { THROUGHCUT_DATA: workshop.data };
    expect((await runProgram(['backup', '--to', backup], { environment })).code).toBe(0);
    await tap(page, b?.id);
    await sign(page, 'All saved');
    writeFileSync(exported, await (await fetch(`${workshop.base}/api/export`)).text());
    await workshop.killServer();
    expect((await runProgram(['restore', '--from', backup], { environment })).code).toBe(0);
    await workshop.startServer();
    await page.locator(`[data-cell="${b?.id ?? ''}"][data-state="unread"]`).waitFor();
    await page.locator(`[data-cell="${a?.id ?? ''}"][data-state="out"]`).waitFor();
    const back = await fetch(`${workshop.base}/api/import`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: await readFile(exported, 'utf8'),
    });
    expect(back.status).toBe(200);
    await page.locator(`[data-cell="${b?.id ?? ''}"][data-state="out"]`).waitFor();
    const at = new Date().toISOString();
    await sendEvents(workshop.base, id, [
      { id: 'later', cardCode: codes[0], at, kind: 'graded', cell: c?.id, grade: 'hangs' },
    ]);
    await page.locator(`[data-cell="${c?.id ?? ''}"][data-state="hangs"]`).waitFor();
    rmSync(folder, { recursive: true });
    await close();
  });
});

describe('what is printed', () => {
  const workshop = openWorkshop();

  it('is the label alone, and the rules for it end with its screen', async () => {
    await fetch(`${workshop.base}/api/example`, { method: 'POST' });
    const { page, close } = await workshop.visit({ viewport: desk });
    await page.goto(`${workshop.base}/book`);
    await page.locator('a.book-entry').first().click();
    await page.locator('a[href$="/label"]').click();
    await page.locator('.label').waitFor();
    await page.emulateMedia({ media: 'print' });
    const title = page.getByRole('heading', { level: 1 });
    expect(await title.isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
    await page.goBack();
    await title.waitFor();
    await page.emulateMedia({ media: 'print' });
    expect(await title.isVisible()).toBe(true);
    await close();
  });
});

describe('a browser that', () => {
  const workshop = openWorkshop();

  it('has no room left keeps what was tapped, at the cost of copies', async () => {
    const { id } = await putSheet(workshop.base);
    const { page, close } = await workshop.visit({ viewport: phone });
    await page.goto(`${workshop.base}/study/${id}`);
    const [a, b] = await cellsOn(page);
    await sign(page, 'All saved');
    await page.evaluate(() => {
      for (let size = 1 << 20; size >= 1; size = size > 1 ? size >> 1 : 0)
        for (let i = 0; ; i += 1) {
          try {
            localStorage.setItem(`filler.${String(size)}.${String(i)}`, 'x'.repeat(size));
          } catch {
            break;
          }
        }
    });
    await workshop.killServer();
    await tap(page, a?.id);
    await tap(page, b?.id);
    await sign(page, /^2 steps kept here/);
    await page.goto('about:blank');
    await workshop.startServer();
    await page.goto(workshop.base);
    await expect.poll(() => cellsSaid(workshop.base, id)).toEqual([a?.id, b?.id]);
    await close();
  });

  it('keeps nothing for this address says so, and works', async () => {
    const { id } = await putSheet(workshop.base);
    const { page, close } = await workshop.visit({ viewport: phone });
    // As a browser does where site data are blocked: whoever merely looks at the storage is thrown an error.
    await page.addInitScript(() => {
      for (const name of ['localStorage', 'sessionStorage'])
        Object.defineProperty(globalThis, name, {
          get: () => {
            throw new DOMException('Access is denied for this document.', 'SecurityError');
          },
        });
    });
    await page.goto(`${workshop.base}/study/${id}`);
    await page.getByText('This browser keeps nothing for this address').waitFor();
    const [cell] = await cellsOn(page);
    await tap(page, cell?.id);
    await sign(page, 'All saved');
    expect(await cellsSaid(workshop.base, id)).toEqual([cell?.id]);
    await close();
  });
});

/** An address under which other machines of the network would find this one. */
const ownAddress = Object.values(networkInterfaces())
  .flat()
  .find((each) => each !== undefined && !each.internal && each.family === 'IPv4')?.address;

describe.skipIf(ownAddress === undefined)('a phone whose pairing ended', () => {
  const workshop = openWorkshop(['--lan']);

  it('keeps what is tapped, asks for the code over what stood there, and then sends', async () => {
    const { id } = await putSheet(workshop.base);
    const deskVisit = await workshop.visit({ viewport: desk });
    await deskVisit.page.goto(`${workshop.base}/machine`);
    const letIn = async (page: Page): Promise<void> => {
      await deskVisit.page.reload();
      // A code serves one phone: for the next one the desk asks again.
      const shown = deskVisit.page.locator('.pair-code');
      const another = deskVisit.page.getByRole('button', { name: 'Show a code' });
      await shown.or(another).first().waitFor();
      if (await another.isVisible()) await another.click();
      const code = await shown.innerText();
      await page.getByLabel('Code shown at the desk').fill(code);
      await page.getByRole('button', { name: 'Let me in' }).click();
    };
    const { page, close } = await workshop.visit({ viewport: phone });
    await page.goto(`${workshop.base.replace('127.0.0.1', ownAddress ?? '')}/study/${id}`);
    await letIn(page);
    const cells = await cellsOn(page);
    await tap(page, cells[0]?.id);
    await sign(page, 'All saved');

    await page.context().clearCookies();
    await tap(page, cells[1]?.id);
    await page.getByRole('heading', { name: 'Let this phone in' }).waitFor();
    await sign(page, /^1 step kept here until this phone is let in/);
    await letIn(page);
    await sign(page, 'All saved');
    await tap(page, cells[2]?.id);
    await sign(page, 'All saved');
    expect(await cellsSaid(workshop.base, id)).toEqual(cells.slice(0, 3).map((cell) => cell.id));
    await close();
    await deskVisit.close();
  });
});
