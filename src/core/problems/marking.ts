import { figure, type ProblemList } from './param.ts';

/** Why no mark can be proposed or found. */
export const markingProblems = {
  'marks-no-room': {},
  'strip-too-few-steps': { steps: figure },
} as const satisfies ProblemList;

export type MarkingCode = keyof typeof markingProblems;
