import { networkInterfaces } from 'node:os';
import { describe, expect, it } from 'vitest';
import { axeFindings, cellsOn, desk, phone, picture } from './page.ts';
import { openWorkshop } from './workshop.ts';

describe('the example workshop', () => {
  const workshop = openWorkshop();

  it('is one click away, says that it is invented, and is one click gone', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    await page.goto(workshop.base);
    await cellsOn(page);
    await page.getByRole('button', { name: 'Look around an example workshop' }).click();
    await page.getByText(/invented, every figure of it/).waitFor();
    await picture(page, 'a phone example bed');
    await page.getByRole('link', { name: 'Book' }).click();
    await page.getByText('Invented example').first().waitFor();
    await picture(page, 'a phone example book');
    await page.getByRole('button', { name: 'Remove the example' }).click();
    await page.getByRole('heading', { level: 1, name: 'What fell out?' }).waitFor();
    const left: unknown = await fetch(`${workshop.base}/api/home`).then((reply) => reply.json());
    expect(left).toEqual({ hasWork: false, exampleOpen: false });
    expect(complaints).toEqual([]);
    await close();
  });
});

/** An address under which other machines of the network would find this one. */
const ownAddress = Object.values(networkInterfaces())
  .flat()
  .find((each) => each !== undefined && !each.internal && each.family === 'IPv4')?.address;

describe.skipIf(ownAddress === undefined)('a phone in the same network', () => {
  const workshop = openWorkshop(['--lan']);

  it('gets in by the code that only the desk shows, without a secure context', async () => {
    const fromAfar = workshop.base.replace('127.0.0.1', ownAddress ?? '');
    const deskVisit = await workshop.visit({ viewport: desk });
    await deskVisit.page.goto(`${workshop.base}/machine`);
    const code = await deskVisit.page.locator('.pair-code').innerText();
    await picture(deskVisit.page, 'a desk invitation');
    expect(await axeFindings(deskVisit.page)).toEqual([]);

    const { page, close } = await workshop.visit({ viewport: phone });
    await page.goto(fromAfar);
    await page.getByRole('heading', { name: 'Let this phone in' }).waitFor();
    expect(await axeFindings(page)).toEqual([]);
    await page.getByLabel('Code shown at the desk').fill('000000' === code ? '111111' : '000000');
    await page.getByRole('button', { name: 'Let me in' }).click();
    await page.locator('.notice-stop').waitFor();
    await picture(page, 'a phone not let in');
    await page.getByLabel('Code shown at the desk').fill(code);
    await page.getByRole('button', { name: 'Let me in' }).click();

    // Plain http by a network address: no crypto.randomUUID here, and ids are made all the same.
    expect(await page.evaluate(() => isSecureContext)).toBe(false);
    const [first] = await cellsOn(page);
    await page.click(`[data-cell="${first?.id ?? ''}"]`);
    await page.getByText('1 of 12 shapes read').waitFor();
    await page.getByRole('button', { name: 'Yes, keep it as my sheet' }).click();
    await page.getByText('All saved').waitFor({ state: 'attached' });
    await deskVisit.page.goto(workshop.base);
    await deskVisit.page.getByText('1 of 12 shapes read').waitFor();
    await close();
    await deskVisit.close();
  });
});
