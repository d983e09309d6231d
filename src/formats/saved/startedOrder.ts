import { z } from 'zod';
import { mostOrderParts } from '../../core/order/order.ts';
import { orderAims, usualPlanCosts, type PlanCosts } from '../../core/plan/planWish.ts';
import type { StartedOrder } from '../../core/study/startedOrder.ts';
import { between, id, isoTime, label, lengthMm, pct } from './bounds.ts';
import { bounds } from './limits.ts';

const seconds = between(bounds.holdUpS);

/** What the work of an order costs, in seconds; what is left out is usual. */
export const planCostsShape = z.strictObject({
  card: seconds.default(usualPlanCosts.card),
  type: seconds.default(usualPlanCosts.type),
  cell: seconds.default(usualPlanCosts.cell),
  read: seconds.default(usualPlanCosts.read),
  part: seconds.default(usualPlanCosts.part),
  knife: seconds.default(usualPlanCosts.knife),
  recut: seconds.default(usualPlanCosts.recut),
  count: seconds.default(usualPlanCosts.count),
}) satisfies z.ZodType<PlanCosts>;

export const acceptNotOutOf100 = z.number().positive().max(50);
export const orderParts = z.int().min(1).max(mostOrderParts);

/** Outlines to tap on, not to cut: what is drawn on a phone needs no more. */
const nestShape = z.strictObject({
  widthMm: lengthMm,
  heightMm: lengthMm,
  parts: z.array(z.array(z.number()).min(4).max(200)).min(1).max(600),
  apart: z.array(z.int().min(0)).max(600).exactOptional(),
});

/** An order as saved and sent. */
export const startedOrderShape = z.strictObject({
  id,
  startedAt: isoTime,
  name: label.exactOptional(),
  parts: orderParts,
  partsPerSheet: orderParts,
  partLengthMm: lengthMm,
  wish: z.enum(orderAims),
  acceptNotOutOf100,
  costS: planCostsShape,
  powerPct: pct.positive().exactOptional(),
  nest: nestShape.exactOptional(),
  endedAt: isoTime.exactOptional(),
}) satisfies z.ZodType<StartedOrder>;
