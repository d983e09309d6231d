import { figure, type ProblemList } from './param.ts';

/** Why a plan's next act is what it is. */
export const planProblems = {
  'plan-card-first': { savesMinutes: figure },
  'plan-first-sheet': { speedMmPerS: figure, notOutOf100: figure },
  'plan-faster': { heldMmPerS: figure, speedMmPerS: figure, notOutOf100: figure },
  'plan-slower': { heldMmPerS: figure, speedMmPerS: figure, notOutOf100: figure },
  'plan-stay': { speedMmPerS: figure, notOutOf100: figure },
  'plan-try-faster': {
    parts: figure,
    fasterMmPerS: figure,
    speedMmPerS: figure,
    notOutOf100: figure,
  },
  'plan-nothing-keeps': { speedMmPerS: figure, notOutOf100: figure },
  'plan-nothing-keeps-since-it-welds': { speedMmPerS: figure, notOutOf100: figure },
  'plan-done': {},
} as const satisfies ProblemList;

export type PlanCode = keyof typeof planProblems;
