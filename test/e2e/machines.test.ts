import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { readCardOf } from '../samples/earlier.ts';
import { axeFindings, desk, phone, picture } from './page.ts';
import { openWorkshop } from './workshop.ts';

interface Known {
  readonly id: string;
  readonly isExample: boolean;
  readonly isDefault: boolean;
  readonly machine: { readonly name?: string; readonly maxPowerPct: number };
  readonly changes: readonly { readonly what: string }[];
}

describe.each([
  ['a phone', phone],
  ['a desk', desk],
])('the machines of a workshop on %s', (where, viewport) => {
  const workshop = openWorkshop();
  const ask = async <T>(path: string, method = 'GET', body?: object): Promise<T> => {
    const reply = await fetch(`${workshop.base}${path}`, {
      method,
      ...(body === undefined
        ? {}
        : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
    });
    expect(reply.status).toBe(200);
    return (await reply.json()) as T;
  };
  const machines = async () => (await ask<{ machines: Known[] }>('/api/machines')).machines;
  const limitOf = async (id: string) =>
    (await ask<{ study: Known }>(`/api/studies/${id}`)).study.machine.maxPowerPct;
  const begin = async (id: string, material: string): Promise<void> => {
    const stock = { material, nominalThicknessMm: 3, thicknessReadingsMm: [] };
    await ask('/api/studies', 'POST', { id, stock, ask: { powerPct: 30 } });
  };
  const allSaved = async (page: Page): Promise<void> => {
    await expect
      .poll(() =>
        page.evaluate(
          () =>
            Object.keys(localStorage).filter((key) => key.startsWith('throughcut.waiting')).length,
        ),
      )
      .toBe(0);
  };

  it('take a limit entered later to sheets that are there, and a second machine that is asked about', async () => {
    await begin('first', 'birch plywood');
    await begin('second', 'MDF');
    const { page, complaints, close } = await workshop.visit({ viewport });
    await page.goto(`${workshop.base}/machine`);
    const limit = page.getByLabel('Highest power setting you allow');
    await limit.fill('62 %');
    await limit.blur();
    await allSaved(page);
    expect([await limitOf('first'), await limitOf('second')]).toEqual([62, 62]);

    // Nobody is asked which before there are two.
    await page.goto(`${workshop.base}/sheets/new`);
    await page.getByRole('heading', { level: 1, name: 'A new sheet' }).waitFor();
    expect(await page.getByText('On which machine is it cut?').count()).toBe(0);

    await page.goto(`${workshop.base}/machine`);
    await page.getByLabel('Name of another machine').fill('Window');
    await page.getByRole('button', { name: 'Add it' }).click();
    await page.getByRole('radio', { name: 'Window', checked: true }).waitFor();
    await allSaved(page);
    const [one, other] = await machines();
    expect([one?.isDefault, one?.machine.maxPowerPct]).toEqual([true, 62]);
    expect([other?.isDefault, other?.machine.maxPowerPct]).toEqual([false, 100]);
    await picture(page, `${where} two machines`);
    expect(await axeFindings(page)).toEqual([]);

    await page.goto(`${workshop.base}/sheets/new`);
    await page.getByRole('radio', { name: 'Window' }).check({ force: true });
    await page.getByLabel('Material').first().fill('poplar plywood');
    await page.getByRole('button', { name: 'Make a card for it' }).click();
    await page.waitForURL(/\/study\/[^/]+\/card$/);
    const id = /study\/([^/]+)\//.exec(page.url())?.[1] ?? '';
    await allSaved(page);
    const { study } = await ask<{ study: { machineId: string } }>(`/api/studies/${id}`);
    expect(study.machineId).toBe(other?.id);
    expect(complaints).toEqual([]);
    await close();
  });

  it('let earlier cards teach less once a lens was changed, and say so', async () => {
    const { card, events } = readCardOf('LENS', 1, { at: '2026-01-15T08:00:00.000Z' });
    await begin('lens', 'birch plywood');
    await ask('/api/studies/lens/cards', 'POST', { card });
    await ask('/api/studies/lens/events', 'POST', { events });
    const answer = () =>
      ask<{ recommended: { speedMmPerS: number } }>(
        '/api/studies/lens/answer?earlierSheets=without',
      );
    const before = await answer();
    const { page, complaints, close } = await workshop.visit({ viewport });
    await page.goto(`${workshop.base}/machine`);
    await page.getByText('Note a change').click();
    // What was changed before the card was cut is nothing to it.
    await ask(`/api/machines/default/changes`, 'POST', {
      id: 'soon',
      what: 'nozzle',
      at: '2026-01-01T00:00:00.000Z',
    });
    await page.getByText('new lens', { exact: true }).click();
    await page.getByRole('button', { name: 'Note it' }).click();
    await page.locator('.machine-changes').getByText('new lens').waitFor();
    await allSaved(page);
    expect(
      (await machines())
        .find(({ isDefault }) => isDefault)
        ?.changes.map(({ what }) => what)
        .sort(),
    ).toEqual(['lens', 'nozzle']);
    await picture(page, `${where} something changed`);
    await page.goto(`${workshop.base}/study/lens`);
    await page
      .getByText(/when the machine was changed \(new lens\)/)
      .first()
      .waitFor();
    const after = await answer();
    expect(after.recommended.speedMmPerS).toBeLessThan(before.recommended.speedMmPerS);
    expect(complaints).toEqual([]);
    await close();
  });

  it('have nothing of the example, while it is open and when it is gone', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport });
    const own = (await machines()).filter(({ isExample }) => !isExample);
    await ask('/api/example', 'POST');
    await page.goto(`${workshop.base}/machine`);
    await page.getByRole('radio', { name: 'Larkspur Lane (invented)' }).check({ force: true });
    await page.getByText(/This machine is invented/).waitFor();
    const limit = page.getByLabel('Highest power setting you allow');
    await limit.fill('71 %');
    await limit.blur();
    await allSaved(page);
    await picture(page, `${where} invented machine`);
    expect((await machines()).filter(({ isExample }) => !isExample)).toEqual(own);
    await begin('beside', 'cork');
    expect(await limitOf('beside')).toBe(62);
    await ask('/api/example', 'DELETE');
    expect(await machines()).toEqual(own);
    await page.reload();
    await page.getByLabel('Highest power setting you allow').waitFor();
    expect(await page.getByText(/Larkspur/).count()).toBe(0);
    expect(await page.evaluate(() => JSON.stringify(localStorage))).not.toContain('Larkspur');
    expect(complaints).toEqual([]);
    await close();
  });
});
