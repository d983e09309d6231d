import { figure, oneOf, type ProblemList } from './param.ts';

/** Parts of a job that fire, as sentences name them; `setting`: one said by itself, before any job. */
const firingParts = ['cell', 'marks', 'trusted', 'line', 'setting'] as const;

export type FiringPart = (typeof firingParts)[number];

const part = oneOf(firingParts);

/** Why a part of a job may not fire as it was asked to. */
export const firingProblems = {
  'fires-above-machine': { part, powerPct: figure, most: figure },
  'fires-above-rated': { part, powerPct: figure, ratedPct: figure },
  'fires-beyond-speeds': {
    part,
    powerPct: figure,
    speedMmPerS: figure,
    least: figure,
    most: figure,
  },
  'fires-above-ceiling': {
    part,
    powerPct: figure,
    times: figure,
    slowestMmPerS: figure,
  },
  'fires-would-cut': {
    part,
    powerPct: figure,
    times: figure,
    slowestMmPerS: figure,
  },
} as const satisfies ProblemList;

export type FiringCode = keyof typeof firingProblems;
