import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { sampleCard, sampleEvent } from '../../test/samples/studies.ts';
import { api } from '../wire/api.ts';

let server: TestServer;
beforeEach(async () => {
  server = await testServer();
});
afterEach(async () => {
  expect(server.reported).toEqual([]);
  await server.close();
});

const ladder = [10, 12, 14, 16, 18, 20, 22, 24];
const cells = ladder.map((speedMmPerS) => ({
  powerPct: 34,
  speedMmPerS,
  grade: speedMmPerS <= 16 ? 'out' : speedMmPerS <= 18 ? 'hangs' : 'stays',
}));
const studyFile = { version: 1, stock: { material: 'plywood', thicknessMm: 3 }, cells };

describe('computing from a study file', () => {
  it('fits, between the slowest that came out and the first that did not', async () => {
    const answer = await server.ask(api.calcFit, { body: { ...studyFile, ask: { powerPct: 34 } } });
    expect(answer.convergence.ok).toBe(true);
    const v50 = Math.exp(answer.posterior.lnV50At.mean);
    expect(v50).toBeGreaterThan(15);
    expect(v50).toBeLessThan(19);
    expect(answer.recommended?.powerPct).toBe(34);
    expect(answer.recommended?.speedMmPerS).toBeLessThan(v50);
  });

  it('says why there is no setting, and asks about a slip', async () => {
    const nothing = await server.ask(api.calcFit, { body: { ...studyFile, cells: [] } });
    expect(nothing.recommended).toBeNull();
    expect(nothing.reason?.code).toBe('nothing-read-yet');
    expect(nothing.reason?.message).not.toMatch(/no words/);
    // A published bamboo row, about 28 times too little energy: common practice, no source.
    const bamboo = {
      version: 1,
      stock: { material: 'bamboo', thicknessMm: 3 },
      habit: { powerPct: 80, speedMmPerS: 500, comesOut: 'always' },
    };
    const questioned = await server.ask(api.calcFit, { body: bamboo });
    expect(questioned.warnings.map(({ code }) => code)).toContain('speed-looks-too-fast');
  });

  it('proposes no more cells and settings than were wished for', async () => {
    const wish = { cellsWanted: 6, settingsAtMost: 3 };
    const next = await server.ask(api.calcNextCard, { body: { ...studyFile, ...wish } });
    expect(next.cells.length).toBeLessThanOrEqual(6);
    expect(next.settings).toBeLessThanOrEqual(3);
    expect(new Set(next.cells.map(({ rung }) => rung)).size).toBe(next.settings);
    expect(next.reason.length).toBeGreaterThan(10);
  });

  it.each([
    [{ ...studyFile, version: 2 }, 'file-version-unknown'],
    [{ ...studyFile, cells: [{ powerPct: 134, speedMmPerS: 10 }] }, 'file-value-too-big'],
    [{ ...studyFile, cells: [{ powerPct: 34, speedMmPerS: '10 mm/s' }] }, 'file-value-wrong-type'],
    [{ ...studyFile, cels: [] }, 'file-key-unknown'],
    [{ version: 1 }, 'file-value-missing'],
  ])('refuses a misshapen file %#', async (body, code) => {
    expect(await server.refusal(api.calcFit, { body })).toEqual([400, code]);
    expect(await server.refusal(api.calcNextCard, { body })).toEqual([400, code]);
  });
});

describe('the answer of a stored study', () => {
  const params = { id: 's1' };
  const stock = { material: 'plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };

  it('is the answer of the same cells in a file', async () => {
    const card = sampleCard('K7QX', {
      rungs: ladder.map((speedMmPerS, i) => ({
        letter: 'ABCDEFGH'.charAt(i),
        setting: { powerPct: 34, speedMmPerS, passes: 1 },
      })),
      cells: ladder.map((_, i) => ({
        id: `${'ABCDEFGH'.charAt(i)}1`,
        rung: 'ABCDEFGH'.charAt(i),
        xMm: 10,
        yMm: 10 * i,
      })),
    });
    await server.ask(api.startStudy, { body: { ...params, stock, ask: { powerPct: 34 } } });
    await server.ask(api.addCard, { params, body: { card } });
    const events = card.cells.map(({ id, rung }, i) => ({
      ...sampleEvent(`e${String(i)}`),
      cell: id,
      grade: cells['ABCDEFGH'.indexOf(rung)]?.grade,
    }));
    await server.ask(api.recordReadings, { params, body: { events } });
    const { leansOn, ...stored } = await server.ask(api.answerStudy, { params });
    expect(leansOn).toEqual({ cells: 0, sheets: 0, parts: 0, orders: 0 });
    const inFile = cells.map((cell) => ({ ...cell, sheet: 'card K7QX', shapeLengthMm: 60 }));
    const filed = await server.ask(api.calcFit, {
      body: { ...studyFile, cells: inFile, ask: { powerPct: 34 } },
    });
    expect(stored).toEqual(filed);
  });

  it('takes wishes for the next card from the address', async () => {
    await server.ask(api.startStudy, { body: { ...params, stock } });
    const query = { cellsWanted: 4, settingsAtMost: 2 };
    const next = await server.ask(api.proposeNextCard, { params, query });
    expect(next.cells.length).toBeLessThanOrEqual(4);
    expect(
      await server.refusal(api.proposeNextCard, { params, query: { cellsWanted: 0 } }),
    ).toEqual([400, 'file-value-too-small']);
  });

  it('is refused for a study that is not there', async () => {
    expect(await server.refusal(api.answerStudy, { params })).toEqual([404, 'study-not-found']);
    expect(await server.refusal(api.proposeNextCard, { params })).toEqual([404, 'study-not-found']);
  });
});
