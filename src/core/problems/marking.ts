import { figure, type ProblemList } from './param.ts';

/** Why no mark can be proposed or found. */
export const markingProblems = {
  'marks-no-room': {},
  'strip-too-few-steps': { steps: figure },
  'tone-too-few': { least: figure },
  'tone-too-flat': { rangeL: figure, leastL: figure },
} as const satisfies ProblemList;

export type MarkingCode = keyof typeof markingProblems;
