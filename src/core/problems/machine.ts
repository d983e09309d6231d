import { figure, type ProblemList } from './param.ts';

/** What can be the matter with what is said of a machine. */
export const machineProblems = {
  'tube-reading-impossible': { powerPct: figure, currentMa: figure },
  'tube-readings-too-few': { settings: figure },
  'tube-never-fired': {},
  'caustic-too-few-positions': { positions: figure },
  'caustic-no-waist': {},
} as const satisfies ProblemList;

export type MachineCode = keyof typeof machineProblems;
