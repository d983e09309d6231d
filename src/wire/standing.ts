import { codesIn } from '../core/problems/param.ts';
import { z } from 'zod';
import { nextActs, standingKinds } from '../core/standing/standing.ts';
import { standingProblems } from '../core/problems/standing.ts';
import { settingShape } from '../formats/saved/setting.ts';
import { promiseShape } from '../formats/saved/study.ts';

/** How a sheet or a kept setting stands, decided once from cards, orders and strips together. */
export const standingReply = z.strictObject({
  kind: z.enum(standingKinds),
  /** The one setting to run now. Absent: none can be said. */
  run: settingShape.exactOptional(),
  /** `run` lies outside what was cut. */
  isGuess: z.boolean(),
  /** The chief reason, and what to do about it. */
  why: z.strictObject({
    code: z.enum(codesIn(standingProblems)),
    params: z.record(z.string(), z.union([z.string(), z.number()])),
    message: z.string(),
    remedy: z.string(),
  }),
  next: z.enum(nextActs),
  /** What is promised, for the part that is cut. */
  promise: promiseShape,
  /** The orders cut with the setting itself. */
  counted: z.strictObject({
    orders: z.number().int(),
    /** Sound parts: without those lost to a flaw. */
    parts: z.number().int(),
    out: z.number().int(),
    notOut: z.number().int(),
    spoilt: z.number().int(),
    /** How many not-out the promise allows for on average in so many parts of their lengths. */
    allowedFor: z.number(),
    /** Chance of so many not-out or more if exactly the promised share came out. */
    chanceOfSoManyPct: z.number(),
    borneOut: z.boolean(),
  }),
});
