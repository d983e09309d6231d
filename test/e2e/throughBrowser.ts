import type { Page } from 'playwright-core';
import { z } from 'zod';
import type { Danger } from '../dangers/danger.ts';
import { refusedBy, type Came } from '../dangers/made.ts';
import { whatFires } from '../dangers/whatFires.ts';
import { undescribedMachine } from '../../src/core/machine/machine.ts';

/** A setting as two fields take it. */
const typedSetting = z.strictObject({ powerPct: z.number(), speedMmPerS: z.number() });
const setting = z.strictObject({
  powerPct: z.number(),
  speedMmPerS: z.number(),
  passes: z.int().optional(),
});
const study = z.strictObject({
  version: z.literal(1),
  machine: z.record(z.string(), z.unknown()).optional(),
  stock: z.strictObject({ material: z.string(), thicknessMm: z.number() }),
  habit: z.unknown().optional(),
});

/** What the screen of a card has a place for; settings said outright are handed over to it by other screens. */
const cardAsked = z.strictObject({
  version: z.literal(1),
  study,
  vary: z.enum(['speed', 'power', 'speed-and-power', 'passes', 'corners']).optional(),
  powerPct: z.number().optional(),
  speedMmPerS: z.number().optional(),
  sheetMm: z.tuple([z.number(), z.number()]).optional(),
  rungs: z.array(setting).optional(),
  scoring: typedSetting.optional(),
  trusted: typedSetting.optional(),
  overdrive: z.boolean().optional(),
});
const rampAsked = z.strictObject({
  version: z.literal(1),
  material: z.string(),
  thicknessMm: z.number().optional(),
  ramp: z.strictObject({ lengthMm: z.number(), blockMm: z.number(), nozzleGapMm: z.number() }),
  setting: typedSetting,
  machine: z.record(z.string(), z.unknown()).optional(),
});

/** Whether the page has a place for what is asked: names of fields and wrong types are nothing that can be typed. */
export const canBeTyped = ({ door, ask }: Danger): boolean =>
  (door === 'card' ? cardAsked : rampAsked).safeParse(ask).success;

const send = async (base: string, path: string, body: object): Promise<Response> =>
  fetch(`${base}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });

const refusal = z.object({ error: z.object({ code: z.string() }) });

const begin = async (
  base: string,
  id: string,
  { stock, machine, habit }: Omit<z.infer<typeof study>, 'version'>,
): Promise<string | undefined> => {
  const reply = await send(base, '/api/studies', {
    id,
    stock: {
      material: stock.material,
      nominalThicknessMm: stock.thicknessMm,
      thicknessReadingsMm: [],
    },
    machine: { ...undescribedMachine, ...machine },
    ...(habit === undefined ? {} : { habit }),
  });
  return reply.ok ? undefined : refusal.parse(await reply.json()).error.code;
};

const varyNames = {
  speed: 'The speed',
  power: 'The power',
  'speed-and-power': 'Speed and power',
  passes: 'Are two passes worth it?',
  corners: 'The corner power',
};

const fill = async (page: Page, label: string, value: number | string, at = 0): Promise<void> => {
  const field = page.getByLabel(label, { exact: true }).nth(at);
  await field.fill(String(value));
  await field.blur();
};

/** What stopped it: the words of a refusal on the screen, or of a field that does not take what is typed. */
const stopped = async (page: Page): Promise<string> => {
  const alerts = await page.getByRole('alert').allInnerTexts();
  const fields = await page.locator('[aria-invalid="true"]').count();
  return alerts.length > 0 || fields > 0
    ? [...alerts, fields > 0 ? 'a field' : ''].join(' ')
    : 'unsaid';
};

/** Types a danger into the page as a person would, and takes what it makes to the machine. `page` is on no screen yet. */
export const throughBrowser = async (
  page: Page,
  base: string,
  { danger, id }: { readonly danger: Danger; readonly id: string },
): Promise<Came> =>
  danger.door === 'card'
    ? card(page, base, { id, asked: cardAsked.parse(danger.ask) })
    : ramp(page, base, { id, asked: rampAsked.parse(danger.ask) });

const card = async (
  page: Page,
  base: string,
  { id, asked }: { readonly id: string; readonly asked: z.infer<typeof cardAsked> },
): Promise<Came> => {
  const refused = await begin(base, id, asked.study);
  if (refused !== undefined) return refusedBy(refused);
  const next = asked.rungs?.map((rung) => ({ passes: 1, ...rung }));
  if (next !== undefined) {
    await page.goto(base);
    await page.evaluate(
      ([key, value]) => {
        sessionStorage.setItem(key, value);
      },
      [`throughcut.next.${id}`, JSON.stringify({ rungs: next })] as const,
    );
  }
  await page.goto(`${base}/study/${id}/card${next === undefined ? '' : '?next'}`);
  await page.getByRole('heading', { name: 'A card for this sheet' }).waitFor();
  await page.getByText('Shape, size, marks and outline').click();
  const [wide, high] = asked.sheetMm ?? [300, 200];
  await fill(page, 'Width of the offcut', wide);
  await fill(page, 'Height of the offcut', high);
  if (asked.vary !== undefined)
    await page
      .getByRole('radio', { name: new RegExp(`^${varyNames[asked.vary]}`) })
      .first()
      .check({ force: true });
  if (next === undefined && asked.powerPct !== undefined)
    await fill(page, 'Power setting you run', asked.powerPct);
  if (asked.speedMmPerS !== undefined) await fill(page, 'At which speed', asked.speedMmPerS);
  for (const [at, said] of [asked.scoring, asked.trusted].entries()) {
    if (said === undefined) continue;
    await fill(page, 'Speed', said.speedMmPerS, at);
    await fill(page, 'Power setting', said.powerPct, at);
  }
  const overdrive = page.getByLabel(/Overdrive: let this card go above/);
  if (asked.overdrive === true && (await overdrive.count()) > 0) await overdrive.check();
  const take = page.getByRole('button', { name: 'Take it to the machine' });
  if ((await take.count()) === 0 || (await page.locator('[aria-invalid="true"]').count()) > 0)
    return refusedBy(await stopped(page));
  const said = await page.locator('.workbench-paper').innerText();
  await take.click();
  await page
    .getByText(/Download the drawing/)
    .first()
    .waitFor();
  const code = new URL(page.url()).pathname.split('/')[4] ?? '';
  const files = new Map<string, string>();
  for (const kind of ['svg', 'dxf', 'gcode', 'json']) {
    const sent = await fetch(`${base}/api/studies/${id}/cards/${code}/card.${kind}`);
    if (sent.ok) files.set(kind, await sent.text());
  }
  return { written: [...files.keys()], said: [said], files: whatFires(files) };
};

const ramp = async (
  page: Page,
  base: string,
  { id, asked }: { readonly id: string; readonly asked: z.infer<typeof rampAsked> },
): Promise<Came> => {
  const { material, thicknessMm, machine, setting: line } = asked;
  const refused = await begin(base, id, {
    stock: { material, thicknessMm: 3 },
    ...(machine === undefined ? {} : { machine }),
  });
  if (refused !== undefined) return refusedBy(refused);
  await page.goto(`${base}/machine/focus`);
  await page.getByLabel('What the strip is of').first().fill(material);
  await fill(page, 'How thick the strip is', `${String(thicknessMm ?? 3)} mm`);
  await fill(page, 'Along the strip, from its low edge to the block', asked.ramp.lengthMm);
  await fill(page, 'Height of the block', asked.ramp.blockMm);
  await fill(page, 'Nozzle above the strip at its low edge', asked.ramp.nozzleGapMm);
  await fill(page, 'Speed', line.speedMmPerS);
  await fill(page, 'Power setting', line.powerPct);
  const link = page.getByRole('link', { name: 'G-code' });
  return (await link.count()) === 0
    ? refusedBy(await stopped(page))
    : { written: ['gcode'], said: [], files: { fires: [], words: [] } };
};
