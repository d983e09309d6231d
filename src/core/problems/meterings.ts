import { figure, text, type ProblemList } from './param.ts';

/** Why two meterings cannot be held against each other, and what is to be minded where they can. */
export const meterCompareProblems = {
  'meterings-of-other-machines': { before: text, now: text },
  'meterings-without-overlap': {},
  'meterings-too-noisy': { withinPct: figure },
  'meterings-rated-otherwise': { beforeMa: figure, nowMa: figure },
  'meterings-water-differs': { beforeC: figure, nowC: figure },
} as const satisfies ProblemList;

export type MeterCompareCode = keyof typeof meterCompareProblems;
