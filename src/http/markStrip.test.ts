import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { printer } from '../cli/printer.ts';
import { markApi } from '../wire/markApi.ts';

let server: TestServer;
beforeEach(async () => {
  server = await testServer({ printer });
});
afterEach(() => server.close());

const query = {
  ...{ strip: 'shades', material: 'birch plywood', thicknessMm: 3.1 },
  ...{ powerPct: 40, speedMmPerS: 14, air: 'pump' },
};
const asked = (over: Readonly<Record<string, string | number>> = {}, kind = 'svg') => ({
  params: { kind },
  query: { ...query, ...over },
});

describe('a marking strip as a file', () => {
  it('is written in every kind, with its settings and cautions in it', async () => {
    for (const [kind, sign] of [
      ['svg', 'marks-'],
      ['dxf', 'marks-'],
      ['gcode', 'marks-'],
      ['pdf', '%PDF'],
    ] as const)
      for (const strip of ['shades', 'lines']) {
        const reply = await server.send(markApi.markStripFile, asked({ strip }, kind));
        expect(reply.statusCode).toBe(200);
        expect(reply.body.toLowerCase()).toContain(sign.toLowerCase());
        if (kind === 'svg') expect(reply.body).toContain('Never leave the machine');
      }
  });

  it('is refused of a refused material, of too many steps, and where nothing may be marked', async () => {
    const refusal = (over: Readonly<Record<string, string | number>>) =>
      server.refusal(markApi.markStripFile, asked(over));
    expect(await refusal({ material: 'PVC' })).toEqual([422, 'material-refused']);
    expect((await refusal({ steps: 40 }))[0]).toBe(400);
    // The thinnest paper, cut very fast: even the gentlest comes through.
    expect(await refusal({ material: 'paper', thicknessMm: 0.1, speedMmPerS: 4000 })).toEqual([
      422,
      'marks-no-room',
    ]);
  });
});
