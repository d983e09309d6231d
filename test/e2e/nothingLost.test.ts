import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openLine } from './faultyLine.ts';
import { cellsOn, desk, ownSample, phone } from './page.ts';
import { cellsSaid, putSheet } from './sheets.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

const allSaved = (page: Page) => page.getByText('All saved').waitFor({ state: 'attached' });

const states = (page: Page): Promise<Record<string, string>> =>
  page.$$eval('[data-cell]', (buttons) =>
    Object.fromEntries(
      buttons.map((button) => [
        button.getAttribute('data-cell') ?? '',
        button.getAttribute('data-state') ?? '',
      ]),
    ),
  );

interface StoredStudy {
  readonly study: { readonly id: string; readonly events: readonly { readonly cell: string }[] };
}

const storedStudy = async (): Promise<StoredStudy> => {
  const home = (await fetch(`${workshop.base}/api/home`).then((r) => r.json())) as {
    latest: { study: { id: string } };
  };
  return (await fetch(`${workshop.base}/api/studies/${home.latest.study.id}`).then((r) =>
    r.json(),
  )) as StoredStudy;
};

describe('nothing that was tapped is lost', () => {
  it('through a reload in the middle of a card', async () => {
    const { page, close } = await workshop.visit({ viewport: phone });
    await page.goto(workshop.base);
    const [first, second, third] = await cellsOn(page);
    for (const cell of [first, second, third]) await page.click(`[data-cell="${cell?.id ?? ''}"]`);
    await page.reload(); // nobody has said yet whose card it is: it is still there to be asked
    await page.getByText('3 of 12 shapes read').waitFor();
    await page.getByRole('link', { name: 'Book' }).click();
    await page.getByRole('heading', { level: 1, name: 'Book' }).waitFor();
    await page.goBack();
    await page.getByText('3 of 12 shapes read').waitFor();
    await page.getByRole('button', { name: 'I was only trying' }).waitFor();
    expect(await (await fetch(`${workshop.base}/api/home`)).json()).toMatchObject({
      hasWork: false,
    });
    await ownSample(page);
    await page.reload(); // at once: whether the last tap had reached the server does not matter
    await page.getByText('3 of 12 shapes read').waitFor();
    await page.getByRole('link', { name: 'Go on reading' }).click();
    await cellsOn(page);
    const after = await states(page);
    expect(Object.values(after).filter((state) => state === 'out')).toHaveLength(3);
    expect(after[first?.id ?? '']).toBe('out');
    await close();
  });

  it('through the death of the server between two taps', async () => {
    const { page, close } = await workshop.visit({ viewport: phone });
    await page.goto(workshop.base);
    await page.getByRole('link', { name: 'Go on reading' }).click();
    const unread = Object.entries(
      await states(page).then(async () => {
        await cellsOn(page);
        return states(page);
      }),
    ).filter(([, state]) => state === 'unread');
    const [a, b, c] = unread.map(([id]) => id);
    await page.click(`[data-cell="${a ?? ''}"]`);
    await allSaved(page);

    await workshop.killServer();
    await page.click(`[data-cell="${b ?? ''}"]`);
    await page.click(`[data-cell="${c ?? ''}"]`);
    await page.getByText(/kept here until the workshop computer answers/).waitFor();
    await page.waitForSelector('.answer-sentence'); // the answer needs no server

    await workshop.startServer();
    await allSaved(page);
    const { study } = await storedStudy();
    for (const id of [a, b, c]) {
      expect(study.events.filter(({ cell }) => cell === id)).toHaveLength(1); // sent again, stored once
    }
    await close();
  });

  it('through the death of the server and of the page', async () => {
    const { page, close } = await workshop.visit({ viewport: phone });
    await page.goto(workshop.base);
    await page.getByRole('link', { name: 'Go on reading' }).click();
    await cellsOn(page);
    const [open] = Object.entries(await states(page)).filter(([, state]) => state === 'unread');
    await workshop.killServer();
    await page.click(`[data-cell="${open?.[0] ?? ''}"]`);
    await page.getByText(/kept here until the workshop computer answers/).waitFor();
    await page.goto('about:blank');
    await workshop.startServer();
    await page.goto(workshop.base);
    await allSaved(page);
    const { study } = await storedStudy();
    expect(study.events.filter(({ cell }) => cell === open?.[0])).toHaveLength(1);
    await close();
  });

  it('through the end of the browser while nothing could be sent, and the bed says how much waits', async () => {
    const line = await openLine(workshop.base);
    const { id, codes } = await putSheet(workshop.base);
    const first = await workshop.visit({ viewport: phone });
    await first.page.goto(`${line.base}/study/${id}`);
    const [a, b, c] = await cellsOn(first.page);
    line.fail(/^POST .*\/events/, { status: 503 });
    for (const cell of [a, b, c]) await first.page.click(`[data-cell="${cell?.id ?? ''}"]`);
    await first.page
      .getByText(/^3 steps kept here/)
      .first()
      .waitFor();
    const storageState = await first.page.context().storageState();
    const browser = first.page.context().browser();
    await first.close();

    // Another start of the browser, with what it had kept; the workshop computer answers, and still takes nothing.
    const context = await browser?.newContext({ viewport: phone, storageState });
    const page = await context?.newPage();
    if (page === undefined) throw new Error('no browser');
    await page.goto(line.base);
    await page.getByText('3 steps of this sheet are not sent yet').waitFor();
    await page.getByText('3 of 12 shapes read').waitFor();
    // And where it does not say anything at all.
    line.fail(/ \/api\//, { status: 503 });
    await page.reload();
    await page.getByRole('heading', { level: 1, name: 'does not answer' }).waitFor();
    await page.getByText('3 steps of this sheet are not sent yet').waitFor();
    await page.getByRole('link', { name: 'Card and answer' }).click();
    await cellsOn(page);
    expect(Object.values(await states(page)).filter((state) => state === 'out')).toHaveLength(3);

    line.mend();
    await allSaved(page);
    expect((await cellsSaid(workshop.base, id)).length).toBe(3);
    await page.goto(line.base);
    await page.getByText('3 of 12 shapes read').waitFor();
    expect(await page.getByText('not sent yet').count()).toBe(0);
    expect(codes.length).toBe(1);
    await context?.close();
    await line.close();
  });

  it('between the phone at the machine and the desk: each sees what the other taps', async () => {
    const [phoneVisit, deskVisit] = [
      await workshop.visit({ viewport: phone }),
      await workshop.visit({ viewport: desk }),
    ];
    const [atPhone, atDesk] = [phoneVisit.page, deskVisit.page];
    for (const page of [atPhone, atDesk]) {
      await page.goto(workshop.base);
      await page.getByRole('link', { name: 'Go on reading' }).click();
      await cellsOn(page);
    }
    const [open] = Object.entries(await states(atPhone)).filter(([, state]) => state === 'unread');
    const id = open?.[0] ?? '';
    await atPhone.click(`[data-cell="${id}"]`);
    await atDesk.locator(`[data-cell="${id}"][data-state="out"]`).waitFor();
    await atDesk.click(`[data-cell="${id}"]`);
    await atPhone.locator(`[data-cell="${id}"][data-state="hangs"]`).waitFor();
    await phoneVisit.close();
    await deskVisit.close();
  });
});
