import { describe, expect, it } from 'vitest';
import type { Locator, Page } from 'playwright-core';
import type { UnitChoice } from '../../src/core/units/unitPreference.ts';
import { showSpeed } from '../../src/core/units/speed.ts';
import type { ProvenSetting } from '../../src/core/book/provenSetting.ts';
import type { WorkshopMachine } from '../../src/core/machine/workshopMachine.ts';
import type { Standing } from '../../src/core/standing/standing.ts';
import { standingText } from '../../src/words/texts.ts';
import { desk, phone, tapCard } from './page.ts';
import { runProgram } from './program.ts';
import { openWorkshop } from './workshop.ts';

interface Listed {
  readonly entry: ProvenSetting;
  readonly standing: Standing;
}

const workshop = openWorkshop();

const book = async (): Promise<readonly Listed[]> => {
  const reply = await fetch(`${workshop.base}/api/book`);
  return ((await reply.json()) as { readonly entries: readonly Listed[] }).entries;
};

const send = async (path: string, body: unknown, method = 'POST'): Promise<void> => {
  const reply = await fetch(`${workshop.base}${path}`, {
    method,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  if (!reply.ok) throw new Error(`${path}: ${String(reply.status)} ${await reply.text()}`);
};

const spoken = ({ kind, isGuess }: Standing): string =>
  `${standingText.kinds[kind]}${isGuess ? ` · ${standingText.guess}` : ''}`;

const saysOf = async (
  place: Locator,
  of: string,
  { entry, standing }: Listed,
  units: UnitChoice,
): Promise<void> => {
  const mark = place.locator('.standing-mark').first();
  await mark.waitFor();
  expect(await mark.innerText(), of).toBe(spoken(standing));
  const said = await place.first().innerText();
  const run = standing.run?.speedMmPerS;
  const speed = run === undefined ? '' : showSpeed(run, units);
  expect(said, of).toContain(`Cut at ${speed}`);
  if (entry.isExample) expect(said, of).toMatch(/invented example/i);
};

interface Expected {
  readonly listed: readonly Listed[];
  readonly step: string;
  readonly units: UnitChoice;
  /** The entry that lies on the bed. */
  readonly onBed: string | undefined;
}

const everyScreenSays = async (
  page: Page,
  { listed, step, units, onBed }: Expected,
): Promise<void> => {
  const where = `${step}, ${String(page.viewportSize()?.width)} px`;
  for (const one of listed) {
    const { id, code } = one.entry;
    for (const address of [`/book/${id}`, `/book/${id}/label`, ...(onBed === id ? ['/bed'] : [])]) {
      await page.goto(workshop.base + address);
      await saysOf(page.locator('main'), `${where}: ${code} on ${address}`, one, units);
    }
  }
  await page.goto(`${workshop.base}/book`);
  for (const one of listed) {
    const row = page.locator('.book li', { hasText: one.entry.code });
    await saysOf(row, `${where}: ${one.entry.code} in the book`, one, units);
  }
};

/** What every surface says of every kept setting, held against what the server says of it. */
const allSayTheSame = async (
  pages: readonly Page[],
  step: string,
  units: UnitChoice = 'mm/s',
): Promise<readonly Listed[]> => {
  const listed = await book();
  const table = await (await fetch(`${workshop.base}/api/export/book.csv`)).text();
  const [head = '', ...rows] = table.trim().split('\r\n');
  const column = (row: string, name: string) => row.split(',')[head.split(',').indexOf(name)];
  const program = await runProgram(['book', 'list'], {
    environment: { THROUGHCUT_DATA: workshop.data },
  });
  const byProgram = (JSON.parse(program.out) as { readonly entries: readonly Listed[] }).entries;
  const home = (await (await fetch(`${workshop.base}/api/home`)).json()) as {
    readonly latest?: { readonly kept?: ProvenSetting };
  };
  for (const { entry, standing } of listed) {
    const of = `${step}: ${entry.code}`;
    const run = standing.run?.speedMmPerS;
    const row = rows.find((each) => each.startsWith(`${entry.code},`)) ?? '';
    expect(column(row, 'standing'), of).toBe(standing.kind);
    expect(Number(column(row, 'run_now_mm_per_s')), of).toBe(run);
    // The last column: what stands before it may have commas of its own.
    expect(row.endsWith(',invented'), of).toBe(entry.isExample);
    const told = byProgram.find((one) => one.entry.id === entry.id);
    expect([told?.standing.kind, told?.standing.run?.speedMmPerS], of).toEqual([
      standing.kind,
      run,
    ]);
  }
  const onBed = home.latest?.kept?.id;
  for (const page of pages) await everyScreenSays(page, { listed, step, units, onBed });
  return listed;
};

const kindOf = (listed: readonly Listed[], id: string) =>
  listed.find(({ entry }) => entry.id === id)?.standing.kind;

/** A card is read and its answer kept, by hand. `machine`: on which, where there are several. */
const readAndKeep = async (page: Page, material: string, machine?: string): Promise<string> => {
  const before = new Set((await book()).map(({ entry }) => entry.id));
  await page.goto(`${workshop.base}/cards/describe`);
  await page.getByLabel('Material').fill(material);
  await page.getByLabel('Speeds', { exact: true }).fill('8, 10, 12, 14, 16, 18, 20');
  await page.getByLabel('Power settings').fill('40');
  if (machine !== undefined) await page.getByText(machine, { exact: true }).first().click();
  await page.getByRole('button', { name: 'Read it' }).click();
  await tapCard(page);
  await page.getByRole('button', { name: /^Keep .* in the book$/ }).click();
  await page.getByRole('link', { name: 'Open it' }).click();
  await page.getByRole('heading', { level: 1, name: /^Cut at/ }).waitFor();
  const added = (await book()).find(({ entry }) => !before.has(entry.id));
  return added?.entry.id ?? '';
};

const machines = async () =>
  (
    (await (await fetch(`${workshop.base}/api/machines`)).json()) as {
      readonly machines: readonly WorkshopMachine[];
    }
  ).machines;

const chooseUnits = async (pages: readonly Page[], units: string): Promise<void> => {
  for (const page of pages) {
    await page.goto(`${workshop.base}/machine`);
    await page.getByText(units).click();
    await page.waitForLoadState('load');
  }
};

/** By hand, as of today. */
const noteNewLens = async (page: Page): Promise<void> => {
  await page.goto(`${workshop.base}/machine`);
  await page.getByText('Note a change').click();
  await page.getByText('new lens', { exact: true }).click();
  await page.getByRole('button', { name: 'Note it' }).click();
  await page.getByRole('button', { name: 'Take back' }).first().waitFor();
};

describe('a working week, on a phone and at a desk', () => {
  it('says the same of each sheet everywhere after each step', async () => {
    const { page: onPhone, close } = await workshop.visit({ viewport: phone });
    const { page: atDesk, close: closeDesk } = await workshop.visit({ viewport: desk });
    const pages = [onPhone, atDesk];

    const first = await readAndKeep(onPhone, 'birch plywood');
    await allSayTheSame(pages, 'a card');

    const order = (id: string, out: number, hangs: number) =>
      send(`/api/book/${id}/tallies`, { out, hangs, stays: 0, spoilt: 2, partLengthMm: 160 });
    await order(first, 120, 0);
    await allSayTheSame(pages, 'a good order');
    await order(first, 150, 40);
    const failed = await allSayTheSame(pages, 'a bad order');
    expect(kindOf(failed, first)).toBe('failed');

    await send(`/api/book/${first}/strips`, { of: 'new-batch', batch: 'autumn' });
    const second = await readAndKeep(atDesk, 'poplar plywood');
    await allSayTheSame(pages, 'a strip and a second sheet');
    const onBed = (await (await fetch(`${workshop.base}/api/home`)).json()) as {
      readonly latest?: { readonly kept?: ProvenSetting };
    };
    expect(onBed.latest?.kept?.id).toBe(second);

    await noteNewLens(onPhone);
    const lensed = await allSayTheSame(pages, 'another lens');
    expect(lensed.map(({ entry }) => entry.id)).toContain(second);
    const lensOn = (await machines()).map(({ changes }) => changes.map(({ what }) => what));
    expect(lensOn.flat()).toContain('lens');

    await atDesk.goto(`${workshop.base}/machine`);
    await atDesk.getByLabel('Name of another machine').fill('the small one');
    await atDesk.getByRole('button', { name: 'Add it' }).click();
    await atDesk.getByRole('radio', { name: 'the small one' }).waitFor({ state: 'attached' });
    const third = await readAndKeep(onPhone, 'alder', 'the small one');
    const twoMachines = await allSayTheSame(pages, 'a second machine');
    expect(twoMachines.find(({ entry }) => entry.id === third)?.entry.holdsFor.machine).toBe(
      'the small one',
    );

    await chooseUnits(pages, 'in, in/min, psi, °F');
    await allSayTheSame(pages, 'inches', 'in/min');
    await chooseUnits(pages, 'mm, mm/s, kPa, °C');

    await send('/api/example', {});
    await allSayTheSame(pages, 'the example opened');
    await fetch(`${workshop.base}/api/example`, { method: 'DELETE' });
    await workshop.killServer();
    await workshop.startServer();
    const after = await allSayTheSame(pages, 'the example left, the server killed and back');
    expect(kindOf(after, first)).toBe('failed');
    expect(after.some(({ entry }) => entry.isExample)).toBe(false);
    await close();
    await closeDesk();
  }, 420_000);
});
