import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sampleMarkTest, sampleStudy } from '../../test/samples/studies.ts';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { omit } from '../core/omit.ts';
import { undescribedMachine } from '../core/machine/machine.ts';
import { api } from '../wire/api.ts';

let server: TestServer;
beforeEach(async () => {
  server = await testServer();
  const { id, createdAt, stock } = sampleStudy('s1');
  const machine = { ...undescribedMachine, maxPowerPct: 60 };
  await server.ask(api.startStudy, { body: { id, createdAt, stock, machine } });
});
afterEach(() => server.close());

const asked = (over: Partial<Parameters<typeof sampleMarkTest>[1]> = {}) =>
  omit(sampleMarkTest('e1', over), 'version', 'machineId');

describe('a mark beside a cut', () => {
  it('is kept with its note, listed, and removed', async () => {
    const { test } = await server.ask(api.recordMarkTest, { body: asked() });
    expect(test).toMatchObject({ id: 'e1', note: 'brown, lines along the grain' });
    const listed = async () =>
      (await server.ask(api.listMarkTests)).tests.map(({ id }: { id: string }) => id);
    expect(await listed()).toEqual(['e1']);
    await server.ask(api.removeMarkTest, { params: { id: 'e1' } });
    expect(await listed()).toEqual([]);
  });

  it('is kept with what was read on its strip of shades, which goes out and comes in with it', async () => {
    const settings = [8, 12, 18, 24].map((powerPct) => ({
      ...{ powerPct, speedMmPerS: 150, passes: 1 },
    }));
    const shades = {
      ...{ settings, lineSpacingMm: 0.1, lightness: [80, 71, null, 55] },
      ...{ by: 'meter' as const, count: 5 },
    };
    await server.ask(api.recordMarkTest, { body: asked({ shades }) });
    expect((await server.ask(api.listMarkTests)).tests[0]?.shades).toEqual(shades);
    const file = await server.ask(api.exportAll);
    await server.ask(api.removeMarkTest, { params: { id: 'e1' } });
    await server.ask(api.importAll, { body: file });
    expect((await server.ask(api.listMarkTests)).tests[0]?.shades).toEqual(shades);
    const short = { ...shades, lightness: [80] };
    const [status, code] = await server.refusal(api.recordMarkTest, {
      body: asked({ id: 'e2', shades: short }),
    });
    expect([status, code]).toEqual([400, 'file-value-refused']);
  });

  it('is not kept beyond a limit of its machine, where it may cut, or of a refused material', async () => {
    const { cut, stock } = sampleMarkTest('e1');
    const score = (powerPct: number, speedMmPerS: number) =>
      asked({ mark: { kind: 'score', setting: { powerPct, speedMmPerS, passes: 1 } } });
    const refusal = (body: ReturnType<typeof asked>) =>
      server.refusal(api.recordMarkTest, { body });
    expect(await refusal(score(70, 100))).toEqual([422, 'fires-above-machine']);
    expect(await refusal(score(20, 300))).toEqual([422, 'fires-beyond-speeds']);
    expect(await refusal(score(cut.powerPct, cut.speedMmPerS))).toEqual([422, 'fires-would-cut']);
    expect(await refusal(asked({ stock: { ...stock, material: 'PVC' } }))).toEqual([
      422,
      'material-refused',
    ]);
    expect((await server.ask(api.listMarkTests)).tests).toEqual([]);
  });
});
