import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readCardOf } from '../../test/samples/earlier.ts';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { api } from '../wire/api.ts';
import { watchApi } from '../wire/watch.ts';
import type { Grade } from '../core/reading/grade.ts';

const stock = {
  material: 'birch plywood',
  nominalThicknessMm: 3,
  thicknessReadingsMm: [3],
  batch: 'spring',
};
const params = { id: 's1' };
const byEntry = { id: 'b1' };
const setting = { powerPct: 30, speedMmPerS: 14.3, passes: 1 };

let server: TestServer;
beforeAll(async () => {
  server = await testServer();
  await server.ask(api.startStudy, { body: { ...params, stock, ask: { powerPct: 30 } } });
  for (const n of [1, 2, 3]) {
    const { card, events } = readCardOf(`E${String(n)}AA`, n);
    await server.ask(api.addCard, { params, body: { card: { ...card, batch: 'spring' } } });
    await server.ask(api.recordReadings, { params, body: { events } });
  }
  await server.ask(api.keepSetting, { body: { ...byEntry, studyId: 's1', setting } });
});
afterAll(async () => {
  expect(server.reported).toEqual([]);
  await server.close();
});

const watch = () => server.ask(watchApi.watchEntry, { params: byEntry });
const count = (out: number, hangs: number) =>
  server.ask(api.tallyEntry, {
    params: byEntry,
    body: { out, hangs, stays: 0, spoilt: 1, partLengthMm: 60 },
  });
/** Cuts a strip as a changeover without scatter would have it, and reads it. */
const cutAndRead = async (id: string, of: 'reference' | 'new-batch', v50: number) => {
  const { studyId, card } = await server.ask(watchApi.cutStrip, {
    params: byEntry,
    body: { id, of, ...(of === 'reference' ? {} : { batch: 'autumn' }) },
  });
  const events = card.cells.map((cell, i) => {
    const speed = card.rungs.find(({ letter }) => letter === cell.rung)?.setting.speedMmPerS ?? 0;
    const grade: Grade = speed < v50 ? 'out' : speed < 1.06 * v50 ? 'hangs' : 'stays';
    const at = '2031-06-01T10:00:00.000Z';
    return {
      id: `${id}-${String(i)}`,
      cardCode: card.code,
      at,
      kind: 'graded',
      cell: cell.id,
      grade,
    } as const;
  });
  await server.ask(api.recordReadings, { params: { id: studyId }, body: { events } });
  return card;
};

describe('watching a proven setting', () => {
  it('says that nothing is counted yet, and then that it comes out as foreseen', async () => {
    expect(await watch()).toMatchObject({
      standing: 'nothing-yet',
      points: [],
      strips: [],
      looks: [],
    });
    for (let n = 0; n < 4; n += 1) await count(199, 1);
    const { standing, points, message } = await watch();
    expect(standing).toBe('as-foreseen');
    expect(points).toHaveLength(4);
    expect(message).toBe('On the chart: 4 orders, none beyond its limits.');
  });

  it('refuses a strip in a new batch that has no name of its own', async () => {
    for (const body of [{ of: 'new-batch' }, { of: 'new-batch', batch: ' Spring ' }] as const) {
      expect(await server.refusal(watchApi.cutStrip, { params: byEntry, body })).toEqual([
        422,
        'strip-needs-batch',
      ]);
    }
  });

  it('lays a strip down as a small card at the proven power, once for one id', async () => {
    const wish = {
      params: byEntry,
      body: { id: 'again', of: 'new-batch', batch: 'summer' },
    } as const;
    const first = await server.ask(watchApi.cutStrip, wish);
    const second = await server.ask(watchApi.cutStrip, wish);
    expect(second.card).toEqual(first.card);
    const { rungs, cells, batch } = first.card;
    expect(batch).toBe('summer');
    expect(cells.length).toBe(6);
    expect(rungs.every((rung) => rung.setting.powerPct === 30)).toBe(true);
    expect(Math.min(...rungs.map((rung) => rung.setting.speedMmPerS))).toBe(14.5);
    const { strips } = await watch();
    expect(strips[0]).toMatchObject({ of: 'new-batch', verdict: 'unread', readCount: 0 });
    // A strip is cut in passing: the sheet that lies on the bed stays there.
    expect((await server.ask(api.home)).latest?.study.id).toBe('s1');
    await server.ask(api.removeStudy, { params: { id: first.studyId } });
  });

  it('tells a batch that cuts worse from a laser that does, with cautions beside each advice', async () => {
    await cutAndRead('kept', 'reference', 18.4);
    await cutAndRead('new', 'new-batch', 14.6);
    const { strips, cause, looks, points } = await watch();
    expect(points.filter(({ kind }) => kind === 'strip')).toHaveLength(2);
    const verdicts = new Map(strips.map((strip) => [strip.of, strip]));
    expect(verdicts.get('reference')?.message).toBe('As before.');
    expect(['retune', 'cut-a-card']).toContain(verdicts.get('new-batch')?.verdict);
    expect(cause?.share.wood).toBeGreaterThan(cause?.share.laser ?? 1);
    expect(looks.length).toBeGreaterThan(0);
    for (const look of looks) expect(look.cautions.length, look.name).toBeGreaterThan(0);
  });

  it('calls when the orders slip', async () => {
    await count(160, 40);
    await count(150, 50);
    const { standing, slipping, message } = await watch();
    expect(standing).toBe('alarm');
    expect(slipping?.speedLossPct).toBeGreaterThan(3);
    expect(message).toMatch(/beyond its limit/);
    // Six orders, two strips and three cards are worked out anew after each count.
  }, 150_000);

  it('knows no entry that is not there', async () => {
    expect(await server.refusal(watchApi.watchEntry, { params: { id: 'nobody' } })).toEqual([
      404,
      'entry-not-found',
    ]);
  });
});
