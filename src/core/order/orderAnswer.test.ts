import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import t07 from '../../../test/reference/t07_binomial.json' with { type: 'json' };
import { successRunSize } from '../../num/successRun.ts';
import { fit } from '../cutmodel/fit.ts';
import { usualAssumptions } from '../cost/partCost.ts';
import { leastCost, priceAt, sharesAt } from './leastCost.ts';
import { orderAnswer } from './orderAnswer.ts';
import { knowsFlaws, orderPoints } from './orderPoints.ts';
import { shareForNone } from './promiseOfNone.ts';

const cells = ['1', '2', '3'].flatMap((sheet) =>
  [12, 14, 16, 18, 20, 22].flatMap((speedMmPerS) =>
    [0, 1].map((again) => ({
      powerPct: 34,
      speedMmPerS,
      grade:
        speedMmPerS < 17 + again
          ? ('out' as const)
          : speedMmPerS < 20
            ? ('hangs' as const)
            : ('stays' as const),
      sheet,
    })),
  ),
);
const study = plainStudy({ cells, ask: { powerPct: 34 } });
const fitted = fit(study);

describe('an order of so many parts', () => {
  it('takes the means that the promise takes', () => {
    for (const what of ['sheet', 'batch', 'newBatch'] as const) {
      const promise = { ...study.promise, for: what };
      const its = fit({ ...study, promise });
      const points = orderPoints(its, promise);
      for (const speedMmPerS of [14, 16, 18]) {
        const shares = sharesAt(points, { powerPct: 34, speedMmPerS, passes: 1 }, 60);
        const difference = (shares?.out ?? 9) - its.decision.shareAt(34, speedMmPerS);
        expect(Math.abs(difference)).toBeLessThan(0.002);
      }
    }
  });

  it('expects few to hang at the setting that is recommended, and plans for them', () => {
    const answer = orderAnswer(fitted, { parts: 60, partsPerSheet: 20 });
    if (!answer.ok) throw new Error(answer.problem.code);
    const { chosen, cheapest, none, order } = answer.value;
    expect(order.setting.powerPct).toBe(34);
    expect(chosen.forecast.hang.mean + chosen.forecast.stay.mean).toBeLessThan(0.03 * 60);
    expect(chosen.forecast.plan).toBeGreaterThanOrEqual(60);
    expect(chosen.forecast.plan).toBeLessThanOrEqual(64);
    expect(cheapest?.cost.total ?? 9).toBeLessThanOrEqual(chosen.cost.total);
    expect(none?.speedMmPerS ?? 99).toBeLessThan(cheapest?.speedMmPerS ?? 0);
    expect(none?.shares.out ?? 0).toBeGreaterThan(shareForNone(60));
  });

  it('expects more to fail the longer the part and the faster the cut', () => {
    const points = orderPoints(fitted, study.promise);
    const failing = (speedMmPerS: number, lengthMm: number) =>
      1 - (sharesAt(points, { powerPct: 34, speedMmPerS, passes: 1 }, lengthMm)?.out ?? 1);
    expect(failing(16, 60)).toBeLessThan(failing(17, 60));
    expect(failing(16, 60)).toBeLessThan(failing(16, 600));
    expect(failing(16, 30)).toBeCloseTo(failing(16, 60), 12);
  });

  it('goes slower the dearer the knife and the recut are', () => {
    const points = orderPoints(fitted, study.promise);
    const speedFor = (knifeSeconds: number, sheetPerPart: number) =>
      leastCost(
        {
          found: fitted,
          points,
          partLengthMm: 60,
          assumed: { ...usualAssumptions, knifeSeconds, sheetPerPart },
        },
        [],
      )?.speedMmPerS ?? 0;
    const [cheap, usual, dear] = [speedFor(0, 0), speedFor(45, 0.2), speedFor(600, 5)];
    expect(cheap).toBeGreaterThanOrEqual(usual);
    expect(usual).toBeGreaterThanOrEqual(dear);
    expect(cheap).toBeGreaterThan(dear);
  });

  it('finds the least of what it prices', () => {
    const points = orderPoints(fitted, study.promise);
    const question = { found: fitted, points, partLengthMm: 60, assumed: usualAssumptions };
    const best = leastCost(question, []);
    for (let speedMmPerS = 12; speedMmPerS <= 17; speedMmPerS += 0.5) {
      const other = priceAt(question, { powerPct: 34, speedMmPerS, passes: 1 });
      expect(best?.cost.total ?? 9).toBeLessThanOrEqual(other?.cost.total ?? 0);
    }
  });

  it('says nothing of flaws until there are readings enough, then carries their rate to the part', () => {
    const tallied = fit({
      ...study,
      tallies: [
        {
          setting: { powerPct: 34, speedMmPerS: 13, passes: 1 },
          out: 190,
          hangs: 0,
          stays: 0,
          spoilt: 10,
          partLengthMm: 200,
        },
      ],
    });
    expect(knowsFlaws(fit(plainStudy({ cells: cells.slice(0, 12) })).posterior)).toBe(false);
    expect(knowsFlaws(tallied.posterior)).toBe(true);
    const answer = orderAnswer(tallied, { parts: 100, partLengthMm: 200 });
    if (!answer.ok) throw new Error(answer.problem.code);
    // Ten of 200 parts of 200 mm met a pocket: about five of 100 such parts.
    expect(answer.value.chosen.forecast.meetFlaw?.mean).toBeGreaterThan(3.5);
    expect(answer.value.chosen.forecast.meetFlaw?.mean).toBeLessThan(7);
    expect(answer.value.flawsPerPart).toBeCloseTo(0.05, 1);
  });

  it('gives the reason of the fit where nothing is recommended', () => {
    const none = orderAnswer(fit(plainStudy()), { parts: 60 });
    expect(none).toMatchObject({ ok: false, problem: { code: 'nothing-read-yet' } });
  });

  it('takes none of N for an even chance of none: the size of a run that shows the share half surely', () => {
    for (const parts of [10, 60, 200]) {
      expect(successRunSize({ reliability: shareForNone(parts), confidence: 0.5 })).toBe(parts);
    }
    // Without a model 97 in 100 at 95 % takes 99 clean parts: Clopper & Pearson's success run, reference t07.
    const run = t07.cases.find(({ name }) => name === 'success-run-95-confidence-0.97-reliability');
    expect(run?.expected).toMatchObject({
      zeroFailures: successRunSize({ reliability: 0.97, confidence: 0.95 }),
    });
    expect(successRunSize({ reliability: 0.97, confidence: 0.95 })).toBe(99);
  });
});
