import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { z } from 'zod';
import { api } from '../../src/wire/api.ts';
import { compareApi } from '../../src/wire/compareApi.ts';
import { markApi } from '../../src/wire/markApi.ts';
import { filesByRequest, type FilesRequest } from '../../src/served/files/filesByRequest.ts';
import { orderApi } from '../../src/wire/order.ts';
import type { Route } from '../../src/wire/route.ts';
import { testServer } from '../samples/server.ts';

const piped = vi.hoisted(() => ({ text: '' }));
vi.mock('../../src/host/files.ts', async (original) => ({
  ...(await original<object>()),
  readStdin: () => Promise.resolve({ ok: true, value: piped.text }),
}));
const { runCompare, runFit, runMarks, runNextCard, runOrder, runPlan, runShades } =
  await import('../../src/cli/calc.ts');
const { runCard } = await import('../../src/cli/card.ts');
const { runCalcExplain, runExplain } = await import('../../src/cli/explain.ts');
const { runProof } = await import('../../src/cli/proof.ts');
const { runWatch } = await import('../../src/cli/watch.ts');
const { writeByRequest } = await import('../../src/cli/writeByRequest.ts');

/** Cells of a card as it may come from any sheet. */
const cells = [12, 14, 16, 18, 20].flatMap((speedMmPerS, i) => [
  { powerPct: 30, speedMmPerS, grade: i < 3 ? 'out' : 'stays' },
  { powerPct: 30, speedMmPerS, grade: i < 2 ? 'out' : 'stays' },
]);
interface Named {
  readonly material: string;
  readonly materialKnown?: true;
}
const studyOf = ({ material, ...known }: Named, more: object = {}): object => ({
  version: 1,
  stock: { material, thicknessMm: 3 },
  ask: { powerPct: 30 },
  cells,
  ...known,
  ...more,
});

const besideCut = (named: Named): object => ({
  version: 1,
  ...named,
  ...{ thicknessMm: 3, cut: { powerPct: 40, speedMmPerS: 14 } },
});
const shadesOf = (named: Named): object => ({
  ...besideCut(named),
  machine: { maxPowerPct: 80, speedRangeMmPerS: [1, 300] },
  steps: [9, 12, 16, 21, 28, 37].map((powerPct, i) => ({
    ...{ powerPct, speedMmPerS: 280, lightness: 82 - 7 * i },
  })),
});

const folder = mkdtempSync(join(tmpdir(), 'throughcut-materials-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const file = (name: string, content: unknown): string => {
  const path = join(folder, name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
};
const pipe = (content: object, run: () => Promise<number>) => (): Promise<number> => {
  piped.text = JSON.stringify(content);
  return run();
};
const setting = { powerPct: 30, speedMmPerS: 13, passes: 1 };
const square =
  '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60"><path stroke="#f00" fill="none" d="M5 5H55V55H5Z"/></svg>';

/** What is asked for of the material, by the command that writes it. */
const drawn: Readonly<Record<FilesRequest, object>> = {
  ramp: {
    ramp: { lengthMm: 200, blockMm: 10, nozzleGapMm: 15 },
    setting: { powerPct: 15, speedMmPerS: 60 },
  },
  kerf: {
    thicknessMm: 3,
    card: { kind: 'comb', pieceMm: [300, 200] },
    setting: { powerPct: 40, speedMmPerS: 14 },
  },
  mark: { thicknessMm: 3, cut: { powerPct: 40, speedMmPerS: 14 }, strip: 'shades' },
};

/** Every command that is told of a material. One more is a line. */
const commands: Readonly<Record<string, (named: Named) => () => Promise<number>>> = {
  'calc fit': (named) => pipe(studyOf(named), runFit),
  'calc nextcard': (named) =>
    pipe(studyOf(named, { cellsWanted: 4, settingsAtMost: 2 }), runNextCard),
  'calc order': (named) => pipe(studyOf(named, { order: { parts: 20 } }), runOrder),
  'calc plan': (named) =>
    pipe(studyOf(named, { plan: { parts: 30, partsPerSheet: 30, partLengthMm: 180 } }), runPlan),
  'calc explain': (named) => pipe(studyOf(named), runCalcExplain),
  'calc compare': ({ material, ...known }) =>
    pipe(
      {
        version: 1,
        stock: { material, thicknessMm: 3 },
        ...known,
        one: { cells },
        other: { cells },
      },
      runCompare,
    ),
  'calc marks': (named) => pipe(besideCut(named), runMarks),
  'calc shades': (named) => pipe(shadesOf(named), runShades),
  explain: (named) => () =>
    runExplain({ study: file('study.json', studyOf(named)), out: join(folder, 'made', 'why.pdf') }),
  card: (named) => () =>
    runCard({
      request: file('card.json', {
        version: 1,
        study: studyOf({ material: named.material }),
        powerPct: 30,
        ...(named.materialKnown ? { materialKnown: true } : {}),
      }),
      out: join(folder, 'made'),
    }),
  ...Object.fromEntries(
    (Object.keys(drawn) as readonly FilesRequest[]).map((name) => [
      name,
      (named: Named) => () =>
        writeByRequest(filesByRequest[name].fromFile, {
          request: file(`${name}.json`, { version: 1, ...named, ...drawn[name] }),
          out: join(folder, 'made'),
        }),
    ]),
  ),
  proof: (named) => () =>
    runProof(file('drawing.svg', square), { study: file('study.json', studyOf(named)) }),
  watch: (named) => () =>
    runWatch(
      file('watch.json', { version: 1, setting, orders: [{ out: 99 }], study: studyOf(named) }),
    ),
};

const printedShape = z.looseObject({
  error: z.object({ code: z.string(), message: z.string(), remedy: z.string() }).optional(),
});

const ran = async (run: () => Promise<number>) => {
  let text = '';
  const output = vi.spyOn(process.stdout, 'write').mockImplementation((chunk) => {
    text += String(chunk);
    return true;
  });
  try {
    rmSync(join(folder, 'made'), { recursive: true, force: true });
    const code = await run();
    const made = readdirSync(folder).includes('made') ? readdirSync(join(folder, 'made')) : [];
    return { code, text, made, error: printedShape.parse(JSON.parse(text)).error };
  } finally {
    output.mockRestore();
  }
};

describe.each(Object.entries(commands))('%s', (_, command) => {
  it.each(['PVC sheet', 'Polystyrol', 'ПВХ', '聚氯乙烯'])(
    'refuses %s with reason and source, whatever a person has looked at',
    async (material) => {
      for (const named of [{ material }, { material, materialKnown: true } as const]) {
        const { code, error, made } = await ran(command(named));
        expect([code, error?.code, made]).toEqual([2, 'material-refused', []]);
        expect(error?.message).toMatch(/Hazard/);
        expect(error?.remedy).toMatch(/Source/);
      }
    },
  );

  it.each([
    ['Kunststoff', 'material-which-plastic'],
    ['leather', 'material-which-leather'],
    ['zorblax', 'material-unknown'],
  ])(
    'asks about %s, and goes on with the question where a person has looked',
    async (material, question) => {
      const asked = await ran(command({ material }));
      expect([asked.code, asked.error?.code, asked.made]).toEqual([2, question, []]);
      const known = await ran(command({ material, materialKnown: true }));
      expect([known.code, known.error]).toEqual([0, undefined]);
      expect(known.text).toContain(material);
      expect(known.text).toMatch(/do not cut it|which plastic|which leather|not in the list/);
    },
  );

  it('says of cardboard that it burns, and of MDF what its smoke holds', async () => {
    expect((await ran(command({ material: 'cardboard' }))).text).toMatch(/flame/);
    expect((await ran(command({ material: 'MDF' }))).text).toMatch(/formaldehyde/);
  });
});

describe('through HTTP', () => {
  const bodies: readonly (readonly [path: string, Route, (named: Named) => object])[] = [
    ['calc/fit', api.calcFit, (named) => studyOf(named)],
    ['calc/nextcard', api.calcNextCard, (named) => studyOf(named)],
    [
      'calc/plan',
      orderApi.calcPlan,
      (named) => ({
        ...studyOf(named),
        plan: { parts: 30, partsPerSheet: 30, partLengthMm: 180 },
      }),
    ],
    [
      'calc/compare',
      compareApi.calcCompare,
      ({ material, ...known }) => ({
        version: 1,
        stock: { material, thicknessMm: 3 },
        ...known,
        one: { cells },
        other: { cells },
      }),
    ],
    ['calc/marks', markApi.calcMarks, besideCut],
    ['calc/shades', markApi.calcShades, shadesOf],
  ];
  it.each(bodies)(
    '%s refuses, asks, and goes on where a person has looked',
    async (_, route, body) => {
      const server = await testServer();
      try {
        const refusal = (named: Named) => server.refusal(route, { body: body(named) });
        expect(await refusal({ material: 'vinyl', materialKnown: true })).toEqual([
          422,
          'material-refused',
        ]);
        expect(await refusal({ material: 'PETG' })).toEqual([422, 'material-which-plastic']);
        const went = await server.send(route, {
          body: body({ material: 'PETG', materialKnown: true }),
        });
        expect(went.statusCode).toBe(200);
        expect(went.body).toContain('PETG');
      } finally {
        await server.close();
      }
    },
  );

  it('lets what is stored of a refused material be read and exported, and says nothing of how to cut it', async () => {
    const server = await testServer();
    try {
      const begun = { material: 'plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };
      const habit = { powerPct: 30, speedMmPerS: 14, comesOut: 'always' };
      const { study } = await server.ask(api.startStudy, { body: { stock: begun, habit } });
      // As a workshop has it that named its sheet before the tool knew the word.
      await server.ports.store.change(async (session) => {
        await session.replaceHead(study.id, {
          ...study,
          stock: { ...begun, material: 'Polystyrol' },
        });
        return { ok: true, value: undefined };
      });
      const params = { id: study.id };
      expect((await server.ask(api.getStudy, { params })).study.stock.material).toBe('Polystyrol');
      expect((await server.ask(api.exportAll)).studies).toHaveLength(1);
      const refused = [422, 'material-refused'];
      expect(await server.refusal(api.answerStudy, { params })).toEqual(refused);
      expect(await server.refusal(api.proposeNextCard, { params })).toEqual(refused);
      expect(
        await server.refusal(api.keepSetting, { body: { studyId: study.id, setting } }),
      ).toEqual(refused);
      expect(
        await server.refusal(api.addCard, { params, body: { request: { powerPct: 30 } } }),
      ).toEqual(refused);
      // Nothing is lost: it comes into another workshop as well, where whatever advises refuses it too.
      const file = await server.ask(api.exportAll);
      const other = await testServer();
      try {
        const { added, notAdvised } = await other.ask(api.importAll, { body: file });
        expect([added.studies, notAdvised.map(({ code }) => code)]).toEqual([
          1,
          ['material-refused'],
        ]);
        expect((await other.ask(api.getStudy, { params })).study.stock.material).toBe('Polystyrol');
        expect(await other.refusal(api.answerStudy, { params })).toEqual(refused);
        expect(await other.refusal(api.proposeNextCard, { params })).toEqual(refused);
      } finally {
        await other.close();
      }
    } finally {
      await server.close();
    }
  });

  it('begins no sheet of an unknown material until a person has looked', async () => {
    const server = await testServer();
    try {
      const stock = { material: 'zorblax', nominalThicknessMm: 3, thicknessReadingsMm: [] };
      expect(await server.refusal(api.startStudy, { body: { stock } })).toEqual([
        422,
        'material-unknown',
      ]);
      const { study } = await server.ask(api.startStudy, {
        body: { stock: { ...stock, materialKnown: true } },
      });
      expect(study.stock.materialKnown).toBe(true);
    } finally {
      await server.close();
    }
  });
});
