import { usualAssumptions, type CostAssumptions } from '../cost/partCost.ts';
import { surerBeside } from '../cutmodel/besides.ts';
import type { Fit } from '../cutmodel/fit.ts';
import { lineOf, recommend } from '../cutmodel/recommend.ts';
import type { Setting } from '../machine/setting.ts';
import { done, refused, type Outcome, type Problem } from '../problem.ts';
import {
  leastCost,
  pointsToSearch,
  priceAt,
  type CostQuestion,
  type PricedSetting,
} from './leastCost.ts';
import type { Order } from './order.ts';
import { orderForecast, type OrderForecast } from './orderForecast.ts';
import { orderPoints } from './orderPoints.ts';
import { promiseOfNone } from './promiseOfNone.ts';

/** What is asked of an order; what is left open follows the study. */
export interface OrderWish {
  /** 1 to {@link mostOrderParts}. */
  readonly parts: number;
  /** Absent: all from one sheet, which is the widest count. */
  readonly partsPerSheet?: number;
  /** Absent: the promise's. */
  readonly partLengthMm?: number;
  /** Absent: one step surer than recommended, as for production. */
  readonly setting?: Setting;
  /** Absent: the usual figures. */
  readonly cost?: Partial<CostAssumptions>;
}

/** A setting with its price and what an order at it comes to. */
export interface PricedOrder extends PricedSetting {
  readonly forecast: OrderForecast;
  /** Cost of the order's good parts. */
  readonly orderCost: number;
}

export interface OrderAnswer {
  readonly version: 1;
  readonly order: Order;
  readonly chosen: PricedOrder;
  /** Null: no speed was cut between the slowest cell and the fastest that came out. */
  readonly cheapest: PricedOrder | null;
  /** Promises that none fails; null with its reason: no setting does. */
  readonly none: PricedOrder | null;
  readonly whyNotNone?: Problem;
  /** Whether flaws are counted; without readings enough every part is taken to be sound. */
  readonly flawsCounted: boolean;
  readonly flawsPerPart?: number;
  readonly assumed: CostAssumptions;
}

/**
 * An order of N: how many hang, how many to plan, and the setting that costs least beside the one that promises none.
 * Refused with the fit's own reason where it recommends nothing and no setting was named. ~150 ms.
 */
export const orderAnswer = (fitted: Fit, wish: OrderWish): Outcome<OrderAnswer> => {
  const { study, posterior } = fitted;
  const line = lineOf(fitted);
  const recommended = recommend(fitted, line);
  if ('reason' in recommended) return { ok: false, problem: recommended.reason };
  const { parts, partLengthMm = study.promise.partLengthMm } = wish;
  const order: Order = {
    parts,
    partLengthMm,
    partsPerSheet: wish.partsPerSheet ?? parts,
    setting: wish.setting ?? {
      powerPct: recommended.powerPct,
      speedMmPerS:
        surerBeside(fitted, recommended).oneStepSurer?.speedMmPerS ?? recommended.speedMmPerS,
      passes: recommended.passes,
    },
  };
  const points = orderPoints(fitted, study.promise);
  const assumed = { ...usualAssumptions, ...wish.cost };
  const question: CostQuestion = { found: fitted, points, partLengthMm, assumed };
  const priced = (setting: Setting): PricedOrder | null => {
    const price = priceAt(question, setting);
    const forecast = orderForecast(points, { ...order, setting });
    return price && forecast && { ...price, forecast, orderCost: parts * price.cost.total };
  };
  const chosen = priced(order.setting);
  if (chosen === null) return refused('power-not-known', { powerPct: order.setting.powerPct });
  const fewer = orderPoints(fitted, study.promise, pointsToSearch);
  const cheapest = leastCost({ ...question, points: fewer }, line);
  const none = promiseOfNone(fitted, parts, partLengthMm);
  return done({
    version: 1,
    order,
    chosen,
    cheapest: cheapest && priced({ ...cheapest, passes: 1 }),
    ...('reason' in none
      ? { none: null, whyNotNone: none.reason }
      : { none: priced({ ...none, passes: none.passes }) }),
    flawsCounted: points.flawsLearnt,
    ...(points.flawsLearnt ? { flawsPerPart: flawsPerPart(posterior, partLengthMm) } : {}),
    assumed,
  });
};

/** Flaws that one part meets on average: the rate a metre, carried to its length. */
const flawsPerPart = ({ weight, flawsPerMetre }: Fit['posterior'], partLengthMm: number): number =>
  (partLengthMm / 1000) *
  weight.reduce((sum, each, i) => sum + each * (flawsPerMetre[i] ?? NaN), 0);
