import { seededRandom, type SeededRandom } from '../../num/seededRandom.ts';
import { systematicResample } from '../../num/systematicResample.ts';
import { planSure, type CountBand, type Order } from './order.ts';
import type { Fate, FateAt, OrderPoints } from './orderPoints.ts';

/** What is to be expected of an order, over all that is known and all that luck may do. */
export interface OrderForecast {
  readonly parts: number;
  readonly comeOut: CountBand;
  /** Need a knife; those that hang for a flaw among them. */
  readonly hang: CountBand;
  /** Not through: lost; those that stay for a flaw among them. */
  readonly stay: CountBand;
  /** Only where the readings tell how many flaws there are; otherwise all parts are taken to be sound. */
  readonly meetFlaw?: CountBand;
  /** Chance that all of them come out, 0–1. */
  readonly chanceAllOut: number;
  /** How many to cut so that enough come out, {@link planSure} sure; null: more than {@link mostTimes} times as many. */
  readonly plan: number | null;
  /** The same where a part that hangs is freed with a knife and is good. */
  readonly planWithKnife: number | null;
}

/** Whole orders played through; with many parts fewer of them, as each then averages more. */
const mostOrders = 6000;
const leastOrders = 1000;
const mostDraws = 2e6;

/** A plan of more than so many times the parts wanted is no plan. */
const mostTimes = 4;

/** Any whole number: the same luck is played for every question, so that equal questions have equal answers. */
const seed = 60_062;

/** The band leaves out one order in twenty on either side. */
const [bandLow, bandHigh] = [0.05, 0.95];

/**
 * The predictive distribution of an order by playing whole orders: each takes a point of the posterior, what all its
 * sheets share, and sheet after sheet a scatter of its own; on a sheet parts fail one by one. Parts are cut until there
 * are enough, which gives the plan. Deterministic. O(orders · parts), ~20 ms for 60 parts. Null: the power says nothing.
 */
export const orderForecast = (points: OrderPoints, order: Order): OrderForecast | null => {
  const fateAt = points.at(order.setting, order.partLengthMm);
  if (fateAt === null) return null;
  const { parts } = order;
  const orders = Math.max(leastOrders, Math.min(mostOrders, Math.ceil(mostDraws / parts)));
  const random = seededRandom(seed);
  const ends = Array.from(systematicResample(points.weight, points.sigma, orders), (point) =>
    play(order, points, point, fateAt, random),
  );
  const sorted = (count: (end: OrderEnd) => number): Int32Array =>
    Int32Array.from(ends, count).sort();
  const most = mostTimes * parts;
  const planOf = (counts: Int32Array): number | null => {
    const plan = quantileOf(counts, planSure);
    return plan > most ? null : plan;
  };
  return {
    parts,
    comeOut: bandOf(sorted((end) => end.out)),
    hang: bandOf(sorted((end) => end.hang)),
    stay: bandOf(sorted((end) => parts - end.out - end.hang)),
    ...(points.flawsLearnt ? { meetFlaw: bandOf(sorted((end) => end.flawed)) } : {}),
    chanceAllOut: ends.filter((end) => end.out === parts).length / orders,
    plan: planOf(sorted((end) => end.enough)),
    planWithKnife: planOf(sorted((end) => end.enoughWithKnife)),
  };
};

/** How one order ended: the first `parts` counted, and after how many parts there were enough. */
interface OrderEnd {
  out: number;
  hang: number;
  flawed: number;
  enough: number;
  enoughWithKnife: number;
}

const play = (
  { parts, partsPerSheet }: Order,
  points: OrderPoints,
  point: number,
  fateAt: FateAt,
  random: SeededRandom,
): OrderEnd => {
  const most = mostTimes * parts;
  const end = { out: 0, hang: 0, flawed: 0, enough: most + 1, enoughWithKnife: most + 1 };
  const fate: Fate = { out: 0, hangs: 0, flaw: 0 };
  const shared = (points.orderSd[point] ?? NaN) * random.normal();
  let [out, hangs] = [0, 0];
  for (let cut = 1; cut <= most && out < parts; cut += 1) {
    if ((cut - 1) % partsPerSheet === 0) {
      fateAt(point, shared + (points.sheetSd[point] ?? NaN) * random.normal(), fate);
    }
    const luck = random.uniform();
    if (luck < fate.out) out += 1;
    else if (luck < fate.out + fate.hangs) hangs += 1;
    if (cut <= parts) {
      end.out = out;
      end.hang = hangs;
      if (isFlawed(fate, luck)) end.flawed += 1;
    }
    if (out + hangs >= parts) end.enoughWithKnife = Math.min(end.enoughWithKnife, cut);
    if (out >= parts) end.enough = cut;
  }
  return end;
};

/** Of those that hang, and of those that stay, the last stretch of luck is that of half the flaws. */
const isFlawed = ({ out, hangs, flaw }: Fate, luck: number): boolean =>
  luck < out + hangs ? luck >= Math.max(out, out + hangs - flaw / 2) : luck >= 1 - flaw / 2;

const bandOf = (sorted: Int32Array): CountBand => ({
  mean: sorted.reduce((sum, count) => sum + count, 0) / sorted.length,
  low: quantileOf(sorted, bandLow),
  high: quantileOf(sorted, bandHigh),
});

/** The least count that is not exceeded with probability `p`. */
const quantileOf = (sorted: Int32Array, p: number): number =>
  sorted[Math.max(0, Math.ceil(p * sorted.length) - 1)] ?? NaN;
