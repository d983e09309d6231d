import { networkInterfaces } from 'node:os';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { pairingReply } from '../../src/wire/pairing.ts';
import { axeFindings, cellsOn, desk, overflow, phone, picture, tapCard } from './page.ts';
import { putSheet, storedStudy } from './sheets.ts';
import { openWorkshop } from './workshop.ts';

/** An address under which other machines of the network would find this one. */
const ownAddress = Object.values(networkInterfaces())
  .flat()
  .find((each) => each !== undefined && !each.internal && each.family === 'IPv4')?.address;

const sign = (page: Page, text: string | RegExp): Promise<void> =>
  page.locator('.shell-sending', { hasText: text }).waitFor({ state: 'attached' });

describe.skipIf(ownAddress === undefined)('a phone of a role', () => {
  const workshop = openWorkshop(['--lan']);
  const outside = () => workshop.base.replace('127.0.0.1', ownAddress ?? '');

  /** The desk says what the next phone may do, and shows the code; the phone types it. */
  const letIn = async (page: Page, role: string, name: string): Promise<void> => {
    const { page: at, close } = await workshop.visit({ viewport: desk });
    await at.goto(`${workshop.base}/machine`);
    await at.getByText(role, { exact: true }).first().click();
    const shown = at.locator('.pair-code');
    const another = at.getByRole('button', { name: 'Show a code' });
    await shown.or(another).first().waitFor();
    if (await another.isVisible()) await another.click();
    await shown.waitFor();
    await at.locator('#phone').scrollIntoViewIfNeeded();
    await picture(at, `desk-pairs-${name}`);
    await page.getByLabel('Code shown at the desk').fill(await shown.innerText());
    await page.getByLabel('Name of this phone').fill(name);
    await page.getByRole('button', { name: 'Let me in' }).click();
    await page.getByLabel('Code shown at the desk').waitFor({ state: 'detached' });
    await close();
  };
  const pairing = async () =>
    pairingReply.parse(await (await fetch(`${workshop.base}/api/pairing`)).json());
  const setRole = async (name: string, role: string): Promise<void> => {
    const id = (await pairing()).phones?.find((one) => one.name === name)?.id ?? '';
    const reply = await fetch(`${workshop.base}/api/pairing/phones/${id}`, {
      method: 'PATCH',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ role }),
    });
    expect(reply.status).toBe(200);
  };

  it('that reads and counts does so, and finds no way to keep a setting', async () => {
    const { id } = await putSheet(workshop.base);
    const { page, close } = await workshop.visit({ viewport: phone });
    await page.goto(`${outside()}/study/${id}`);
    await letIn(page, 'reads and counts', 'kit');
    await cellsOn(page);
    await tapCard(page);
    await page.waitForSelector('.answer-sentence[aria-busy="false"] .answer-cut');
    await sign(page, 'All saved');
    await page.getByText('Count an order', { exact: true }).click();
    await page.getByLabel('Speed it was cut at').fill('12');
    await page.getByLabel('Power setting it was cut at').fill('34');
    await page.getByLabel('Parts cut', { exact: true }).fill('30');
    await page.getByLabel('Length of cut of one part').first().fill('60');
    await page.getByRole('button', { name: 'Save the count' }).click();
    await sign(page, 'All saved');
    await expect.poll(async () => (await storedStudy(workshop.base, id)).tallies.length).toBe(1);
    const { events, tallies } = await storedStudy(workshop.base, id);
    expect(new Set(events.map(({ by }) => by))).toEqual(new Set(['kit']));
    expect(tallies[0]?.by).toBe('kit');

    await page.getByText('Write a note on the card', { exact: true }).click();
    const note = page.locator('details', { hasText: 'Write a note on the card' }).last();
    await note.getByRole('textbox').fill('smoky at the left');
    await note.getByRole('button', { name: 'Keep it' }).click();
    await expect
      .poll(async () => (await storedStudy(workshop.base, id)).cards[0]?.note)
      .toBe('smoky at the left');
    expect(await page.getByText('Write a note on the sheet', { exact: true }).count()).toBe(0);

    const keep = page.getByRole('button', { name: /^Keep .* in the book$/ });
    const remove = page.getByRole('button', { name: 'Remove this sheet' });
    expect([await keep.count(), await remove.count()]).toEqual([0, 0]);
    expect(await overflow(page)).toBe(0);
    expect(await axeFindings(page)).toEqual([]);
    await picture(page, 'phone-apprentice-study');
    const atDesk = await workshop.visit({ viewport: desk });
    await atDesk.page.goto(`${workshop.base}/study/${id}`);
    await atDesk.page.getByRole('button', { name: /^Keep .* in the book$/ }).waitFor();
    await atDesk.close();

    const byHand = await page.evaluate(async (studyId) => {
      const reply = await fetch('/api/book', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ studyId, setting: { powerPct: 30, speedMmPerS: 9, passes: 1 } }),
      });
      return [reply.status, await reply.text()] as const;
    }, id);
    expect(byHand[0]).toBe(403);
    expect(byHand[1]).toContain('role-too-low');

    await page.goto(`${outside()}/sheets/new`);
    await page.getByText('This is for whoever decides or runs the place.').waitFor();
    expect(await page.getByRole('button', { name: 'Make a card for it' }).count()).toBe(0);
    await picture(page, 'phone-apprentice-new-sheet');
    await page.goto(`${outside()}/machine`);
    await page.getByText('This phone may read and count.').waitFor();
    await page.getByText('This is for whoever runs the place.').waitFor();
    expect(await overflow(page)).toBe(0);
    await picture(page, 'phone-apprentice-machine');

    // What it may do more is there at once, without a reload.
    await setRole('kit', 'runs-the-place');
    await page.getByText('This is for whoever runs the place.').waitFor({ state: 'detached' });
    await close();
  });

  it('that was let do less while it was away keeps what was done there, and says why it is not taken', async () => {
    const { id } = await putSheet(workshop.base);
    const { page, close } = await workshop.visit({ viewport: phone });
    await page.goto(`${outside()}/study/${id}`);
    await letIn(page, 'decides', 'bench');
    const [cell] = await cellsOn(page);
    await page.getByText('Write a note on the sheet', { exact: true }).click();
    const fold = page.locator('details', { hasText: 'Write a note on the sheet' }).last();
    await page.context().setOffline(true);
    await fold.getByRole('textbox').fill('warped');
    await fold.getByRole('button', { name: 'Keep it' }).click();
    await page.click(`[data-cell="${cell?.id ?? ''}"]`);
    await sign(page, /2 steps/);
    await setRole('bench', 'reads-and-counts');
    await page.context().setOffline(false);
    await expect.poll(async () => (await storedStudy(workshop.base, id)).events.length).toBe(1);
    await page.goto(`${outside()}/not-taken`);
    await page.getByRole('strong').getByText('This phone may read and count; for this').waitFor();
    await page.getByText('A change of the sheet').waitFor();
    await picture(page, 'phone-not-taken');
    expect((await storedStudy(workshop.base, id)).stock.note).toBeUndefined();
    await setRole('bench', 'decides');
    await page.getByRole('button', { name: 'Send again' }).click();
    await expect.poll(async () => (await storedStudy(workshop.base, id)).stock.note).toBe('warped');
    await close();
  });

  it('is listed at the desk with what it may do, changed and renamed there', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    await page.goto(`${workshop.base}/machine`);
    await page.getByText('What bench may do, and its name', { exact: true }).click();
    const fold = page.locator('details', { hasText: 'What bench may do' });
    await fold.getByText('reads and counts', { exact: true }).click();
    const roleOf = async (name: string) =>
      (await pairing()).phones?.find((one) => one.name === name)?.role;
    await expect.poll(() => roleOf('bench')).toBe('reads-and-counts');
    expect(await overflow(page)).toBe(0);
    expect(await axeFindings(page)).toEqual([]);
    await picture(page, 'phone-roles');
    await page.setViewportSize(desk);
    await picture(page, 'desk-roles');
    await fold.getByLabel('Another name for this phone').fill('rig');
    await fold.getByRole('button', { name: 'Rename' }).click();
    await page.getByText('What rig may do, and its name', { exact: true }).waitFor();
    await expect.poll(() => roleOf('rig')).toBe('reads-and-counts');
    expect(complaints).toEqual([]);
    await close();
  });
});
