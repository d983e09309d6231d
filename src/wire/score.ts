import { z } from 'zod';
import { promiseVerdicts } from '../core/score/scorePromises.ts';
import { scoreAddresses } from './laterAddresses.ts';
import { route } from './route.ts';

const band = z.tuple([z.number(), z.number()]).readonly();

const promiseLine = z.strictObject({
  promisedOutOf100: z.number(),
  sheets: z.number().int(),
  parts: z.number().int(),
  out: z.number().int(),
  outOf100: z.number(),
  /** 95 % sure, with parts of one sheet good or bad together. */
  bandOf100: band,
  designEffect: z.number(),
  /** Sheets worse than the promise allows for by luck one time in twenty, and their share in 100. */
  worseSheets: z.number().int(),
  worseBandPct: band,
  verdict: z.enum(promiseVerdicts),
});

const calibrationBin = z.strictObject({
  sheets: z.number().int(),
  parts: z.number().int(),
  foretoldOutOf100: z.number(),
  outOf100: z.number(),
  bandOf100: band,
});

/** What was promised held against what came. */
export const scoreReply = z.strictObject({
  sheets: z.number().int(),
  parts: z.number().int(),
  groups: z.array(
    z.strictObject({
      by: z.enum(['all', 'material', 'machine']),
      name: z.string(),
      promises: z.array(promiseLine),
      bins: z.array(calibrationBin),
    }),
  ),
});

/** Whether promises hold in this workshop. */
export const scoreApi = {
  scorePromises: route({
    ...scoreAddresses.scorePromises,
    summary: 'What was promised of every counted sheet, held against what came',
    reply: scoreReply,
  }),
  exportCounts: route({
    ...scoreAddresses.exportCounts,
    summary: 'Counts with what was promised of them, without names, notes and dates',
  }),
} as const;
