import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sampleStudy } from '../../test/samples/studies.ts';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { printer } from '../cli/printer.ts';
import { undescribedMachine } from '../core/machine/machine.ts';
import { api } from '../wire/api.ts';
import { kerfApi } from '../wire/kerfApi.ts';

let server: TestServer;
beforeEach(async () => {
  server = await testServer({ printer });
});
afterEach(() => server.close());

const query = {
  ...{ card: 'comb', material: 'birch plywood', thicknessMm: 3.1 },
  ...{ powerPct: 40, speedMmPerS: 14, air: 'pump' },
};
const asked = (over: Readonly<Record<string, string | number>> = {}, kind = 'svg') => ({
  params: { kind },
  query: { ...query, ...over },
});

describe('a comb or slot card as a file', () => {
  it('is written in every kind, with its setting and cautions in it', async () => {
    for (const [kind, sign] of [
      ['svg', 'inside 14.0mmps 40pct corner40 air-on'],
      ['dxf', 'inside 14.0mmps 40pct corner40 air-on'],
      ['gcode', 'inside 14.0mmps 40pct corner40 air-on'],
      ['pdf', '%PDF'],
    ] as const) {
      for (const card of ['comb', 'slots']) {
        const reply = await server.send(kerfApi.kerfCardFile, asked({ card }, kind));
        expect(reply.statusCode).toBe(200);
        expect(reply.body).toContain(sign);
        expect(reply.headers['content-disposition']).toContain(`.${kind}`);
        if (kind === 'svg') expect(reply.body).toContain('Never leave the machine');
      }
    }
  });

  it('is refused of a refused material, beyond a limit, and where the piece is too small', async () => {
    expect(await server.refusal(kerfApi.kerfCardFile, asked({ material: 'PVC' }))).toEqual([
      422,
      'material-refused',
    ]);
    const { id, createdAt, stock } = sampleStudy('s1');
    await server.ask(api.startStudy, {
      body: { id, createdAt, stock, machine: { ...undescribedMachine, maxPowerPct: 30 } },
    });
    expect(await server.refusal(kerfApi.kerfCardFile, asked())).toEqual([
      422,
      'fires-above-machine',
    ]);
    expect(
      await server.refusal(kerfApi.kerfCardFile, asked({ powerPct: 20, pieceWidthMm: 80 })),
    ).toEqual([422, 'comb-piece-too-small']);
    expect(await server.refusal(kerfApi.kerfCardFile, asked({ machineId: 'nobody' }))).toEqual([
      404,
      'machine-not-found',
    ]);
  });
});

describe('what was measured', () => {
  const comb = { direction: 'across', strips: 10, nominalMm: 60, measuredMm: [58, 58.01] };

  it('tells the kerf by the same numbers as the command', async () => {
    const told = await server.ask(kerfApi.calcKerf, {
      body: { version: 1, combs: [{ ...comb, barMm: [59.8, 59.8] }] },
    });
    // (59.80 − (58.005 − 9 · 0.005)) / 9
    expect(told.kerf?.kerfMm).toBeCloseTo((59.8 - 58.005 + 0.045) / 9, 9);
    expect(told.growMm).toBeCloseTo((told.kerf?.kerfMm ?? NaN) / 2, 12);
    expect(told.remarks.map(({ code }) => code)).toContain('kerf-one-place');
  });

  it('is refused where strips are wider than drawn', async () => {
    const body = { version: 1, combs: [{ ...comb, measuredMm: [60.5] }] };
    expect(await server.refusal(kerfApi.calcKerf, { body })).toEqual([422, 'kerf-not-positive']);
  });

  it('moves a drawing by half the kerf, and says what it loses', async () => {
    const text =
      '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40"><g fill="none" stroke="#f00"><rect x="10" y="10" width="40" height="20"/><rect x="20" y="15" width="0.15" height="8"/></g></svg>';
    const grown = await server.ask(kerfApi.growDrawing, { body: { text, kerfMm: 0.2, as: 'dxf' } });
    expect(grown.text).toContain('LWPOLYLINE');
    expect(grown.lost.map(({ what }) => what)).toEqual(['hole']);
    expect(grown.growMm).toBe(0.1);
    const gcode = { text: 'G21\nG90\nM3 S500\nG1 X10 F600\nM5\n', kerfMm: 0.2, as: 'svg' };
    expect(await server.refusal(kerfApi.growDrawing, { body: gcode })).toEqual([
      422,
      'grow-not-a-drawing',
    ]);
  });
});
