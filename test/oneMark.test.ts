import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { beginMarks } from '../src/app/card/beginMarks.ts';
import { designMarkStrip } from '../src/app/card/designMarkStrip.ts';
import { tellEvenShades } from '../src/app/card/tellEvenShades.ts';
import type { BesideCut } from '../src/core/marking/markLimits.ts';
import { markApi } from '../src/wire/markApi.ts';
import { testServer, type TestServer } from './samples/server.ts';

const lightness = [82, 79, 74, 66, 58, 50, 44, 41];
const sheets: readonly (readonly [string, BesideCut])[] = [
  [
    'a machine of 60 W',
    {
      cut: { powerPct: 40, speedMmPerS: 14, passes: 1, air: 'pump' },
      stock: { material: 'birch plywood', nominalThicknessMm: 3.1 },
      machine: { maxPowerPct: 80, nominalW: 60, speedRangeMmPerS: [1, 300] },
    },
  ],
  [
    'a tube whose threshold was read, two passes, a head that starts slowly',
    {
      cut: { powerPct: 55, speedMmPerS: 11, passes: 2, minPowerPct: 30 },
      stock: { material: 'acrylic', nominalThicknessMm: 5 },
      machine: {
        ...{ maxPowerPct: 90, ratedCurrentMa: 24, speedRangeMmPerS: [2, 500] },
        tubePoints: [
          { powerPct: 9, currentMa: 0 },
          { powerPct: 14, currentMa: 3 },
          { powerPct: 60, currentMa: 17 },
          { powerPct: 90, currentMa: 27 },
        ],
        motion: {
          accelerationMmPerS2: 600,
          corner: { rule: 'junction-deviation', deviationMm: 0.05 },
          travelSpeedMmPerS: 400,
        },
      },
    },
  ],
];

const piped = (command: string, file: object): unknown => {
  const run = spawnSync('npm', ['run', '-s', 'throughcut', '--', 'calc', command], {
    input: JSON.stringify(file),
    encoding: 'utf8',
  });
  expect(run.status, run.stdout + run.stderr).toBe(0);
  return JSON.parse(run.stdout) as unknown;
};

const inFile = ({ cut, stock, machine }: BesideCut) => ({
  version: 1,
  ...{ material: stock.material, thicknessMm: stock.nominalThicknessMm },
  ...{ cut, machine, lineSpacingMm: 0.12 },
});

/** The same question asked of the verb that the page works out, of the server, and of the program. */
describe.each(sheets)('marks beside a cut on %s', (_, beside) => {
  let server: TestServer;
  beforeAll(async () => {
    server = await testServer();
  });
  afterAll(() => server.close());

  it('begin with one and the same at every door', async () => {
    const ofPage = beginMarks({ ...beside, lineSpacingMm: 0.12 });
    if (!ofPage.ok || !ofPage.value.score.ok || !ofPage.value.engrave.ok) throw new Error('none');
    const [score, engrave] = [ofPage.value.score.value, ofPage.value.engrave.value];
    if (score.kind !== 'score' || engrave.kind !== 'engrave') throw new Error('tape');
    const ofServer = await server.ask(markApi.calcMarks, { body: inFile(beside) });
    expect(ofServer.score.begin).toEqual(score.setting);
    expect(ofServer.engrave.begin).toEqual({ ...engrave.setting, lineSpacingMm: 0.12 });
    expect(ofServer.how).toContain('guess');
    expect(ofServer.cautions.join(' ')).toContain('Never leave the machine');
    expect(piped('marks', inFile(beside))).toEqual(ofServer);
  });

  it('have one and the same even shades at every door', async () => {
    const made = designMarkStrip({
      ...beside,
      wish: { kind: 'shades', steps: 8, lineSpacingMm: 0.12 },
    });
    if (!made.ok) throw new Error(made.problem.code);
    const { strip } = made.value;
    const ofPage = tellEvenShades({ ...beside, strip, read: { lightness, by: 'card', count: 4 } });
    if (!ofPage.ok) throw new Error(ofPage.problem.code);
    const file = {
      ...inFile(beside),
      steps: strip.settings.map((setting, i) => ({ ...setting, lightness: lightness[i] })),
      ...{ readBy: 'card', shades: 4 },
    };
    const ofServer = await server.ask(markApi.calcShades, { body: file });
    expect(ofServer.shades).toEqual(
      ofPage.value.shades.map(({ setting, lightness: tone, standardL }) => ({
        ...setting,
        ...{ lightness: tone, standardL, expandedL: 2 * standardL },
      })),
    );
    expect([ofServer.more, ofServer.lineSpacingMm]).toEqual(['darker', 0.12]);
    expect(ofServer.cautions.join(' ')).toContain('Never leave the machine');
    expect(piped('shades', file)).toEqual(ofServer);
  });
});

describe('a file of shades', () => {
  it('takes the steps as the strip was printed, and is refused in words where it says too little', async () => {
    const page = readFileSync(join(import.meta.dirname, '../docs/formats/shades.md'), 'utf8');
    const file = JSON.parse(/```json\n([^`]+)```/.exec(page)?.[1] ?? '') as {
      steps: { lightness?: number }[];
    };
    const server = await testServer();
    try {
      const told = await server.ask(markApi.calcShades, { body: file });
      expect(told.shades).toHaveLength(4);
      const few = { ...file, steps: file.steps.slice(0, 3) };
      expect(await server.refusal(markApi.calcShades, { body: few })).toEqual([
        422,
        'tone-too-few',
      ]);
      const blinding = { ...file, steps: [{ ...file.steps[0], lightness: 120 }] };
      expect((await server.refusal(markApi.calcShades, { body: blinding }))[0]).toBe(400);
      // Steps said outright that would cut are not said to be shades.
      const cutting = {
        ...file,
        steps: [20, 16, 12, 8, 4].map((speedMmPerS, i) => ({
          ...{ powerPct: 60, speedMmPerS, lightness: 80 - 10 * i },
        })),
      };
      expect(await server.refusal(markApi.calcShades, { body: cutting })).toEqual([
        422,
        'fires-would-cut',
      ]);
    } finally {
      await server.close();
    }
  });
});
