import { usualAssumptions } from '../../src/core/cost/partCost.ts';
import { goodPartCost } from '../../src/core/cost/goodPartCost.ts';
import type { Fit } from '../../src/core/cutmodel/fit.ts';
import { oneStepFaster, oneStepSurer } from '../../src/core/cutmodel/answerSpeed.ts';
import { lineOf, recommend } from '../../src/core/cutmodel/recommend.ts';
import { leastCost, pointsToSearch } from '../../src/core/order/leastCost.ts';
import type { Order } from '../../src/core/order/order.ts';
import { orderForecast } from '../../src/core/order/orderForecast.ts';
import { orderPoints } from '../../src/core/order/orderPoints.ts';
import { nearestStep, nextStep } from '../../src/core/machine/speedSteps.ts';
import type { Grade } from '../../src/core/reading/grade.ts';
import { referenceLengthMm } from '../../src/core/reading/promise.ts';
import { virtualWorkshop, type WorkshopTraits } from '../../src/core/virtual/virtualWorkshop.ts';
import { seededRandom, type SeededRandom } from '../../src/num/seededRandom.ts';
import { knownShop, shopKinds, traitsOf, type ShopKind } from '../shopKinds.ts';

/** What the workshop really cuts: no grade noted wrongly, and flaws only where the forecast counts them. */
const truthOf = (traits: WorkshopTraits, withFlaws: boolean, random: SeededRandom) => {
  const shop = virtualWorkshop(
    { ...traits, misreadShare: 0, ...(withFlaws ? {} : { flawShare: 0 }) },
    random,
  );
  /** Parts of one sheet. A part of so many reference lengths is as bad as the worst of them. */
  return (parts: number, setting: Order['setting'], lengths: number): readonly Grade[] => {
    const stretches = shop.cutCard(
      Array.from({ length: parts * lengths }, () => ({
        ...setting,
        xMm: shop.bed.widthMm / 2,
        yMm: shop.bed.heightMm / 2,
      })),
    );
    return Array.from({ length: parts }, (_, i): Grade => {
      const own = stretches.slice(i * lengths, (i + 1) * lengths);
      return own.includes('stays') ? 'stays' : own.includes('hangs') ? 'hangs' : 'out';
    });
  };
};

type Cut = ReturnType<typeof truthOf>;

/** The grades of so many parts, sheet after sheet. */
const cutOrder = (cut: Cut, order: Order, parts: number): readonly Grade[] => {
  const lengths = Math.round(order.partLengthMm / referenceLengthMm);
  const grades: Grade[] = [];
  while (grades.length < parts) {
    grades.push(
      ...cut(Math.min(order.partsPerSheet, parts - grades.length), order.setting, lengths),
    );
  }
  return grades;
};

/** How often what was forecast came true. */
interface Kept {
  orders: number;
  inBand: number;
  planEnough: number;
  planExtra: number;
  expected: number;
  failed: number;
}
const nothingYet = (): Kept => ({
  orders: 0,
  inBand: 0,
  planEnough: 0,
  planExtra: 0,
  expected: 0,
  failed: 0,
});

/** Parts, parts a sheet, reference lengths a part. */
const orders = [
  { parts: 60, partsPerSheet: 20, lengths: 1 },
  { parts: 60, partsPerSheet: 60, lengths: 1 },
  { parts: 24, partsPerSheet: 6, lengths: 3 },
] as const;

const settingsOf = (fitted: Fit) => {
  const recommended = recommend(fitted, lineOf(fitted));
  if ('reason' in recommended) return [];
  const { powerPct, speedMmPerS } = recommended;
  const at = (speed: number) => ({ powerPct, speedMmPerS: speed, passes: 1 });
  return [
    { name: 'surer', setting: at(oneStepSurer(speedMmPerS)) },
    { name: 'faster', setting: at(oneStepFaster(speedMmPerS)) },
  ];
};

/** Forecasts of one kind of workshop held against orders cut in it. */
const playKind = (kind: ShopKind, shops: number) => {
  const kept = new Map<string, Kept>();
  for (let seed = 1; seed <= shops; seed += 1) {
    const traits = traitsOf(kind, seed);
    const fitted = knownShop(traits, seed);
    const points = orderPoints(fitted, fitted.study.promise);
    const cut = truthOf(traits, points.flawsLearnt, seededRandom(seed + 9_000_000));
    for (const { name, setting } of settingsOf(fitted)) {
      const tally = kept.get(name) ?? nothingYet();
      kept.set(name, tally);
      for (const { parts, partsPerSheet, lengths } of orders) {
        const order = { parts, partsPerSheet, partLengthMm: lengths * referenceLengthMm, setting };
        const forecast = orderForecast(points, order);
        if (forecast === null) continue;
        const out = cutOrder(cut, order, parts).filter((grade) => grade === 'out').length;
        const planned = forecast.plan ?? 4 * parts;
        const good = cutOrder(cut, order, planned).filter((grade) => grade === 'out').length;
        tally.orders += 1;
        tally.inBand += out >= forecast.comeOut.low && out <= forecast.comeOut.high ? 1 : 0;
        tally.planEnough += good >= parts ? 1 : 0;
        tally.planExtra += planned / parts - 1;
        tally.expected += parts - forecast.comeOut.mean;
        tally.failed += parts - out;
      }
    }
  }
  return kept;
};

/** The true cost of a good part at each speed, by cutting so many sheets of 20. */
const trueCosts = (traits: WorkshopTraits, fitted: Fit, sheets: number, seed: number) => {
  const powerPct = traits.typicalPowerPct;
  return (speedMmPerS: number): number => {
    // The same luck at every speed, so that speeds are compared and not their luck.
    const cut = truthOf(
      traits,
      orderPoints(fitted, fitted.study.promise).flawsLearnt,
      seededRandom(seed),
    );
    let [hangs, stays] = [0, 0];
    for (let sheet = 0; sheet < sheets; sheet += 1) {
      for (const grade of cut(20, { powerPct, speedMmPerS, passes: 1 }, 1)) {
        if (grade === 'hangs') hangs += 1;
        if (grade === 'stays') stays += 1;
      }
    }
    const parts = 20 * sheets;
    return goodPartCost(
      {
        seconds: referenceLengthMm / speedMmPerS,
        shareOfRated: powerPct / 100,
        knifeShare: hangs / parts,
        lostShare: stays / parts,
      },
      usualAssumptions,
    ).total;
  };
};

/** How much dearer than the truly cheapest speed the chosen ones are, in per cent; medians and nine in ten. */
const playCosts = (shops: number, sheets: number) => {
  const [cheapest, recommendedOnes, wrong]: [number[], number[], number[]] = [[], [], []];
  for (let seed = 1; seed <= shops; seed += 1) {
    const kind = shopKinds[seed % 4];
    if (kind === undefined) continue;
    const traits = traitsOf(kind, seed + 500);
    const fitted = knownShop(traits, seed + 500);
    const recommended = recommend(fitted, lineOf(fitted));
    if ('reason' in recommended) continue;
    const chosen = leastCost(
      {
        found: fitted,
        points: orderPoints(fitted, fitted.study.promise, pointsToSearch),
        partLengthMm: referenceLengthMm,
        assumed: usualAssumptions,
      },
      lineOf(fitted),
    );
    if (chosen === null) continue;
    const costAt = trueCosts(traits, fitted, sheets, seed);
    let least = Infinity;
    for (
      let speed = nearestStep(0.5 * traits.v50MmPerS);
      speed < 1.3 * traits.v50MmPerS;
      speed = nextStep(speed)
    ) {
      least = Math.min(least, costAt(speed));
    }
    const really = costAt(chosen.speedMmPerS);
    cheapest.push(100 * (really / least - 1));
    recommendedOnes.push(100 * (costAt(recommended.speedMmPerS) / least - 1));
    wrong.push(100 * (chosen.cost.total / really - 1));
  }
  return { cheapest, recommendedOnes, wrong };
};

const quantile = (values: readonly number[], p: number): string =>
  (
    [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(p * values.length))] ??
    NaN
  ).toFixed(1);
const pct = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)} %`;

/** Orders foretold and then cut: one line a figure. */
export const orderBench = function* (shops: number): Generator<string> {
  yield `orders of ${orders.map(({ parts, partsPerSheet, lengths }) => `${String(parts)} (${String(partsPerSheet)} a sheet, ${String(60 * lengths)} mm)`).join(', ')}; ${String(shops)} workshops a kind, three ladders of 12 cells each`;
  for (const kind of shopKinds) {
    for (const [name, kept] of playKind(kind, shops)) {
      yield `  ${kind.name}, one step ${name}: ${String(kept.orders)} orders, count in its nine-in-ten band ${pct(kept.inBand, kept.orders)} (target 90 % or more), plan enough ${pct(kept.planEnough, kept.orders)} (target 90 % or more) with ${pct(kept.planExtra, kept.orders)} extra; failed ${(kept.failed / kept.orders).toFixed(2)} of an order, ${(kept.expected / kept.orders).toFixed(2)} foretold`;
    }
  }
  const costs = playCosts(Math.ceil(shops / 3), 250);
  yield `least cost against brute force, ${String(costs.cheapest.length)} workshops, 5000 parts a speed: dearer than the truly cheapest speed by ${quantile(costs.cheapest, 0.5)} % (median), ${quantile(costs.cheapest, 0.9)} % (nine in ten)`;
  yield `  the fastest that holds 97 in 100: by ${quantile(costs.recommendedOnes, 0.5)} % and ${quantile(costs.recommendedOnes, 0.9)} %; the cost foretold is off by ${quantile(costs.wrong, 0.05)} to ${quantile(costs.wrong, 0.95)} % (nine in ten)`;
};
