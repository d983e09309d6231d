import { spawnSync } from 'node:child_process';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { planOrder } from '../src/app/sums/planOrder.ts';
import type { CutStudy } from '../src/core/cutmodel/cutStudy.ts';
import { usualPlanCosts, type PlanWish } from '../src/core/plan/planWish.ts';
import { planFile } from '../src/formats/planFile.ts';
import { cutStudyFile } from '../src/formats/studyFile.ts';
import { orderApi } from '../src/wire/order.ts';
import { problemInWords } from '../src/words/words.ts';
import { plainStudy } from './plainStudy.ts';
import { testServer, type TestServer } from './samples/server.ts';

const promise = { outOf100: 97, surePct: 95, partLengthMm: 180, for: 'batch' } as const;

const sheetOf = (speedMmPerS: number, hangs: number, sheet: string) => ({
  setting: { powerPct: 34, speedMmPerS, passes: 1 },
  ...{ out: 30 - hangs, hangs, stays: 0, spoilt: 0, partLengthMm: 180, sheet },
});

const wishOf = (wish: Partial<PlanWish>): PlanWish => ({
  ...{ parts: 300, done: 0, partsPerSheet: 30, partLengthMm: 180, wish: 'promise' },
  ...{ acceptNotOutOf100: 3, costS: usualPlanCosts, ...wish },
});

const ofPower = { promise, ask: { powerPct: 34 } } as const;

const orders: readonly (readonly [string, CutStudy, PlanWish])[] = [
  ['nothing known', plainStudy(ofPower), wishOf({})],
  [
    'a habit',
    plainStudy({ ...ofPower, habit: { powerPct: 34, speedMmPerS: 12, comesOut: 'always' } }),
    wishOf({ wish: 'cheapest' }),
  ],
  [
    'two sheets counted, the last one badly',
    plainStudy({ ...ofPower, tallies: [sheetOf(12, 0, 'one'), sheetOf(14, 7, 'two')] }),
    wishOf({ done: 60 }),
  ],
  [
    'done',
    plainStudy({ ...ofPower, tallies: [sheetOf(12, 0, 'one')] }),
    wishOf({ parts: 30, done: 30 }),
  ],
];

/** The same order asked of the page's worker, of the server, and of `calc plan` as a program. */
describe('the plan of an order', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await testServer();
  });
  afterAll(() => server.close());

  it.each(orders)('is one at every door: %s', async (_, study, wish) => {
    const file = { ...cutStudyFile(study), plan: wish };
    const ofServer = await server.ask(orderApi.calcPlan, { body: file });
    const run = spawnSync('npm', ['run', '-s', 'throughcut', '--', 'calc', 'plan'], {
      input: JSON.stringify(file),
      encoding: 'utf8',
    });
    const ofProgram: unknown = JSON.parse(run.stdout);
    // The page's thread asks this very verb.
    const planned = planOrder({ study, wish, earlier: [] });
    if (!planned.ok) throw new Error('no plan on the page');
    const { plan, ofMaterial } = planned.value;

    expect(ofProgram).toEqual(ofServer);
    expect(JSON.parse(JSON.stringify(planFile(plan, ofMaterial, problemInWords)))).toEqual(
      ofServer,
    );
  });

  it('is asked of a study without one in vain, with words that say what to add', async () => {
    const body = cutStudyFile(plainStudy(ofPower));
    expect(await server.refusal(orderApi.calcPlan, { body })).toEqual([422, 'plan-not-said']);
  });
});
