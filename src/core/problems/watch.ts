import { figure, text, type ProblemList } from './param.ts';

/** Why a check strip cannot be cut, or what is missing in what is watched. */
export const watchProblems = {
  'strip-needs-batch': { kept: text },
  'strip-too-narrow': { leastMmPerS: figure, mostMmPerS: figure },
} as const satisfies ProblemList;

export type WatchCode = keyof typeof watchProblems;
