import { codesIn } from '../core/problems/param.ts';
import { z } from 'zod';
import { planProblems } from '../core/problems/plan.ts';
import { id } from '../formats/saved/bounds.ts';
import { startedOrderShape } from '../formats/saved/startedOrder.ts';
import { orderAddresses } from './addresses.ts';
import { studyAnswerQuery, studyFileBody } from './answer.ts';
import { saidProblem } from './problem.ts';
import { route } from './route.ts';

const cell = z.object({ powerPct: z.number(), speedMmPerS: z.number(), rung: z.string() });
const part = z.object({ powerPct: z.number(), speedMmPerS: z.number(), parts: z.number().int() });
const speed = z.number().nullable();

/** The next act of an order as `calc plan` prints it. */
export const planReply = z.object({
  version: z.literal(1),
  next: z.discriminatedUnion('act', [
    z.object({ act: z.literal('card'), cells: z.array(cell) }),
    z.object({ act: z.literal('sheet'), settings: z.array(part) }),
    z.object({ act: z.literal('done') }),
  ]),
  reason: saidProblem.extend({ code: z.enum(codesIn(planProblems)) }),
  expected: z.object({
    minutes: z.number(),
    minutesBand: z.tuple([z.number(), z.number()]),
    notOutOf100: z.number(),
    againstCardsFirstMinutes: z.number(),
  }),
  /** Of the next sheet. */
  sheet: z
    .object({
      parts: z.number().int(),
      notOut: z.number(),
      notOutAtMost: z.number().int(),
      outOf100: z.number(),
      sureOfPromisePct: z.number(),
    })
    .exactOptional(),
  /** Where the fastest speed that keeps the promise lies by now. */
  keeps: z.object({ sureMmPerS: speed, evenMmPerS: speed, hardlyMmPerS: speed }).exactOptional(),
  warnings: z.array(saidProblem),
});

const byOrder = z.strictObject({ id, orderId: id });
const revised = z.strictObject({ revision: z.number().int() });

/** What the server offers of an order that is cut sheet by sheet. */
export const orderApi = {
  keepOrder: route({
    ...orderAddresses.keepOrder,
    summary: 'Start an order on a sheet, or say it anew; sent twice it changes nothing',
    params: byOrder,
    body: startedOrderShape.omit({ id: true }),
    reply: revised,
  }),
  removeOrder: route({
    ...orderAddresses.removeOrder,
    summary: 'Remove an order; what was counted of it stays',
    params: byOrder,
    reply: revised,
  }),
  planStartedOrder: route({
    ...orderAddresses.planStartedOrder,
    summary: 'The next act of an order that was started, with what earlier sheets taught',
    params: byOrder,
    query: studyAnswerQuery,
    reply: planReply,
  }),
  calcPlan: route({
    ...orderAddresses.calcPlan,
    summary: 'The next act of an order for a study file with a plan; nothing is stored',
    body: studyFileBody,
    reply: planReply,
  }),
} as const;
