import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { z } from 'zod';
import type { Setting } from '../../src/core/machine/setting.ts';
import { api } from '../../src/wire/api.ts';
import { testServer } from '../samples/server.ts';

/** Settings that are said without a card: to be proved, watched, ordered by, asked for or kept. */

const piped = vi.hoisted(() => ({ text: '' }));
vi.mock('../../src/host/files.ts', async (original) => ({
  ...(await original<object>()),
  readStdin: () => Promise.resolve({ ok: true, value: piped.text }),
}));
const { runFit, runNextCard, runOrder, runPlan } = await import('../../src/cli/calc.ts');
const { runProof } = await import('../../src/cli/proof.ts');
const { runWatch } = await import('../../src/cli/watch.ts');

const folder = mkdtempSync(join(tmpdir(), 'throughcut-settings-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const file = (name: string, content: unknown): string => {
  const path = join(folder, name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
};

/** Reaches its rated 24 mA at 59.7 %, and is kept to 70 %. */
const machine = {
  maxPowerPct: 70,
  speedRangeMmPerS: [1, 100],
  ratedCurrentMa: 24,
  tubePoints: [
    { powerPct: 10, currentMa: 3 },
    { powerPct: 60, currentMa: 24.12 },
  ],
};
const study = (more: object = {}): object => ({
  version: 1,
  machine,
  stock: { material: 'plywood', thicknessMm: 3.1 },
  cells: [12, 14, 16, 18, 20].map((speedMmPerS, i) => ({
    ...{ powerPct: 34, speedMmPerS },
    grade: i < 3 ? 'out' : 'stays',
  })),
  ...more,
});
const square =
  '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60"><path stroke="#f00" fill="none" d="M5 5H55V55H5Z"/></svg>';

const printedShape = z.looseObject({
  error: z.object({ code: z.string(), message: z.string(), remedy: z.string() }).optional(),
});
const ran = async (run: () => Promise<number>, input?: object) => {
  let text = '';
  piped.text = JSON.stringify(input);
  const output = vi.spyOn(process.stdout, 'write').mockImplementation((chunk) => {
    text += String(chunk);
    return true;
  });
  try {
    const code = await run();
    const printed = printedShape.parse(JSON.parse(text));
    return { code, printed, error: printed.error?.code };
  } finally {
    output.mockRestore();
  }
};

const beyond: readonly (readonly [what: string, Setting, code: string])[] = [
  [
    'above the machine’s limit',
    { powerPct: 95, speedMmPerS: 14, passes: 1 },
    'fires-above-machine',
  ],
  ['faster than the machine', { powerPct: 34, speedMmPerS: 400, passes: 1 }, 'fires-beyond-speeds'],
  ['slower than the machine', { powerPct: 34, speedMmPerS: 0.1, passes: 1 }, 'fires-beyond-speeds'],
  ['that would burn', { powerPct: 59, speedMmPerS: 1, passes: 1 }, 'fires-above-ceiling'],
  [
    'that would burn by its passes',
    { powerPct: 34, speedMmPerS: 14, passes: 50 },
    'fires-above-ceiling',
  ],
];
const words = ({ powerPct, speedMmPerS, passes }: Setting): string =>
  `${String(speedMmPerS)} mm/s ${String(powerPct)}% x${String(passes)}`;

/** Every command that is told of a setting by itself. One more is a line. */
const commands: Readonly<Record<string, (setting: Setting) => ReturnType<typeof ran>>> = {
  proof: (setting) =>
    ran(() =>
      runProof(file('square.svg', square), {
        study: file('study.json', study()),
        setting: words(setting),
      }),
    ),
  watch: (setting) =>
    ran(() =>
      runWatch(file('watch.json', { version: 1, setting, orders: [{ out: 99 }], study: study() })),
    ),
  'calc order': (setting) => ran(runOrder, study({ order: { parts: 20, setting } })),
};

describe.each(Object.entries(commands))('%s', (_, command) => {
  it.each(beyond)('refuses a setting %s', async (_what, setting, code) => {
    const { code: ended, error } = await command(setting);
    expect([ended, error]).toEqual([2, code]);
  });

  it('goes on with one that the machine may be set to', async () => {
    const { code, error } = await command({ powerPct: 34, speedMmPerS: 14, passes: 1 });
    expect([code, error]).toEqual([0, undefined]);
  });
});

it('goes on with a slow setting that was counted already, whatever is believed of the sheet', async () => {
  const slow: Setting = { powerPct: 59, speedMmPerS: 1, passes: 1 };
  const counted = { ...slow, out: 40, hangs: 0, stays: 0, spoilt: 0 };
  const { code } = await ran(
    runOrder,
    study({ tallies: [counted], order: { parts: 20, setting: slow } }),
  );
  expect(code).toBe(0);
});

it('an order at a setting above rated current says so, and one with the air off says what that does', async () => {
  const setting = { powerPct: 65, speedMmPerS: 14, passes: 1 };
  const cells = [12, 16, 20].map((speedMmPerS, i) => ({
    ...{ powerPct: 34, speedMmPerS, air: 'off' },
    grade: i < 2 ? 'out' : 'stays',
  }));
  const { printed } = await ran(runOrder, study({ cells, order: { parts: 20, setting } }));
  expect(JSON.stringify(printed['warnings'])).toMatch(/air-off-burns.*card-rung-overdrives/);
});

it('so does a watched one', async () => {
  const setting = { powerPct: 65, speedMmPerS: 14, passes: 1, air: 'off' };
  const { printed } = await ran(() =>
    runWatch(file('watch.json', { version: 1, setting, orders: [{ out: 99 }], study: study() })),
  );
  expect(JSON.stringify(printed['warnings'])).toMatch(/card-rung-overdrives.*air-off-burns/);
});

const thin = { cells: [], stock: { material: 'paper', thicknessMm: 0.1 }, ask: { powerPct: 34 } };

it.each([
  ['calc nextcard', runNextCard, { cellsWanted: 6, settingsAtMost: 3 }],
  ['calc plan', runPlan, { plan: { parts: 30, partsPerSheet: 30, partLengthMm: 180 } }],
])('%s proposes nothing for a sheet that the machine is too strong for', async (_, run, more) => {
  const { code, error } = await ran(run, study({ ...thin, ...more }));
  expect([code, error]).toEqual([2, 'card-machine-too-strong']);
});

const overdriven: Setting = { powerPct: 65, speedMmPerS: 14, passes: 1 };

it('a proof says that a setting drives the tube above its rated current', async () => {
  const { code, printed } = await ran(() =>
    runProof(file('square.svg', square), {
      study: file('study.json', study()),
      setting: words(overdriven),
    }),
  );
  expect(code).toBe(0);
  expect(JSON.stringify(printed)).toContain('"proof-overdrives"');
});

it('a watched setting above rated current gets no strip', async () => {
  const { printed } = await ran(() =>
    runWatch(
      file('watch.json', { version: 1, setting: overdriven, orders: [{ out: 9 }], study: study() }),
    ),
  );
  expect(printed['nextStrip']).toBeNull();
});

const spot = z.object({ powerPct: z.number(), speedMmPerS: z.number() });

describe.each([
  [{ powerPct: 95 }],
  [{ powerPct: 65 }],
  [{ speedMmPerS: 0.05 }],
  [{ speedMmPerS: 400 }],
  [{ powerPct: 95, speedMmPerS: 0.05 }],
])('what is asked for beyond a limit, %o', (ask) => {
  const isWithin = ({ powerPct, speedMmPerS }: z.infer<typeof spot>): boolean =>
    powerPct <= 59.7 && speedMmPerS >= 1 && speedMmPerS <= 100;

  it('gets an answer within them, or none', async () => {
    const { code, printed } = await ran(runFit, study({ ask }));
    expect(code).toBe(0);
    const recommended = spot.nullable().parse(printed['recommended']);
    expect(recommended === null || isWithin(recommended)).toBe(true);
  });

  it('gets a next card within them', async () => {
    const wanted = { cellsWanted: 6, settingsAtMost: 3 };
    const { code, printed } = await ran(runNextCard, study({ ask, ...wanted }));
    expect(code).toBe(0);
    const cells = z.array(spot).parse(printed['cells']);
    expect(cells.length).toBeGreaterThan(0);
    expect(cells.filter((cell) => !isWithin(cell))).toEqual([]);
  });
});

describe('the book', () => {
  it('keeps no setting that the machine may not be set to, and can read what it keeps', async () => {
    const server = await testServer();
    try {
      const stock = { material: 'plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };
      const habit = { powerPct: 34, speedMmPerS: 14, comesOut: 'always' };
      await server.ask(api.startStudy, { body: { id: 's1', stock, machine, habit } });
      for (const [, setting, code] of beyond) {
        const wanted = code === 'fires-above-machine' ? 'power-above-machine' : code;
        expect(await server.refusal(api.keepSetting, { body: { studyId: 's1', setting } })).toEqual(
          [422, wanted],
        );
      }
      // As sure as can be, and counted already: what is stored stays within what can be read again.
      const setting = { powerPct: 34, speedMmPerS: 1, passes: 1 };
      const counts = { out: 40, hangs: 0, stays: 0, spoilt: 0, partLengthMm: 60 };
      await server.ask(api.recordTally, {
        params: { id: 's1' },
        body: { id: 't1', setting, ...counts },
      });
      const { entry } = await server.ask(api.keepSetting, { body: { studyId: 's1', setting } });
      expect(entry.outOf100Mean).toBeLessThanOrEqual(100);
      const read = await server.ask(api.getEntry, { params: { id: entry.id } });
      expect(read.entry.setting).toEqual(setting);
    } finally {
      await server.close();
    }
  });
});
