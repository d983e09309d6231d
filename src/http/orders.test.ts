import { afterEach, beforeEach, expect, it } from 'vitest';
import { planFile } from '../formats/planFile.ts';
import { planOrder } from '../app/sums/planOrder.ts';
import { orderSoFar, planWishOf, studyOfOrder } from '../core/study/orderSoFar.ts';
import { api } from '../wire/api.ts';
import { orderApi } from '../wire/order.ts';
import { problemInWords } from '../words/words.ts';
import { omit } from '../core/omit.ts';
import { sampleOrder } from '../../test/samples/studies.ts';
import { testServer, type TestServer } from '../../test/samples/server.ts';

let server: TestServer;
beforeEach(async () => {
  server = await testServer();
});
afterEach(() => server.close());

const start = async (): Promise<string> => {
  const body = {
    id: 's1',
    stock: { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] },
  };
  await server.ask(api.startStudy, { body });
  return 's1';
};
const order = sampleOrder('o1', {
  name: 'Keyrings for the fair',
  powerPct: 34,
  parts: 90,
});
const body = omit(order, 'id');
const params = { id: 's1', orderId: 'o1' };

const countSheet = (id: string, sheet: string, hangs: number) => ({
  id,
  setting: { powerPct: 34, speedMmPerS: 12, passes: 1 },
  ...{ out: 30 - hangs, hangs, stays: 0, spoilt: 0, partLengthMm: 180 },
  ...{ sheet, orderId: 'o1', foretold: { outOf100: 98.4, promisedOutOf100: 97, surePct: 96 } },
});

it('starts an order with its sheet, counts a sheet of it, and plans the next by what the page plans with', async () => {
  await start();
  const first = await server.ask(orderApi.keepOrder, { params, body });
  expect(await server.ask(orderApi.keepOrder, { params, body })).toEqual(first);
  expect((await server.ask(orderApi.planStartedOrder, { params })).next.act).toBe('card');

  await server.ask(api.recordTally, { params: { id: 's1' }, body: countSheet('t1', 'one', 1) });
  const { study } = await server.ask(api.getStudy, { params: { id: 's1' } });
  expect(study.orders).toEqual([order]);
  expect(study.tallies[0]).toMatchObject({ orderId: 'o1', foretold: { surePct: 96 } });

  const served = await server.ask(orderApi.planStartedOrder, { params });
  const soFar = orderSoFar(order, study.tallies);
  const here = planOrder({
    study: studyOfOrder(study, order),
    wish: planWishOf(order, soFar),
    earlier: [],
  });
  if (!here.ok) throw new Error(here.problem.code);
  const { plan, ofMaterial } = here.value;
  expect(served).toEqual(JSON.parse(JSON.stringify(planFile(plan, ofMaterial, problemInWords))));
  expect(served.next.act).toBe('sheet');
});

it('keeps order and forecast with a count that is mended, and the counts where the order is removed', async () => {
  await start();
  await server.ask(orderApi.keepOrder, { params, body });
  await server.ask(api.recordTally, { params: { id: 's1' }, body: countSheet('t1', 'one', 1) });
  const { out, hangs, stays, spoilt, partLengthMm, sheet } = countSheet('t1', 'one', 4);
  const { tally } = await server.ask(api.correctTally, {
    params: { tallyId: 't1' },
    body: { out, hangs, stays, spoilt, partLengthMm, sheet },
  });
  expect(tally).toMatchObject({ hangs: 4, orderId: 'o1', foretold: { outOf100: 98.4 } });
  await server.ask(orderApi.removeOrder, { params });
  const { study } = await server.ask(api.getStudy, { params: { id: 's1' } });
  expect(study.orders).toBeUndefined();
  expect(study.tallies).toHaveLength(1);
});

it('comes back with its sheet, and travels in an export', async () => {
  await start();
  await server.ask(orderApi.keepOrder, { params, body });
  const file = await server.ask(api.exportAll);
  await server.ask(api.removeStudy, { params: { id: 's1' } });
  const back = await server.ask(api.putBackStudy, { params: { id: 's1' } });
  expect(back.study.orders).toEqual([order]);
  const other = await testServer();
  try {
    await other.ask(api.importAll, { body: file });
    const { study } = await other.ask(api.getStudy, { params: { id: 's1' } });
    expect(study.orders).toEqual([order]);
  } finally {
    await other.close();
  }
});

it('refuses an order of an unknown sheet, of another sheet, or that is not there', async () => {
  expect(await server.refusal(orderApi.keepOrder, { params, body })).toEqual([
    404,
    'study-not-found',
  ]);
  await start();
  expect(await server.refusal(orderApi.planStartedOrder, { params })).toEqual([
    404,
    'order-not-found',
  ]);
  expect(await server.refusal(orderApi.removeOrder, { params })).toEqual([404, 'order-not-found']);
  await server.ask(orderApi.keepOrder, { params, body });
  await server.ask(api.startStudy, {
    body: {
      id: 's2',
      stock: { material: 'acrylic', nominalThicknessMm: 3, thicknessReadingsMm: [] },
    },
  });
  const elsewhere = { params: { id: 's2', orderId: 'o1' }, body };
  expect(await server.refusal(orderApi.keepOrder, elsewhere)).toEqual([409, 'order-id-taken']);
});
