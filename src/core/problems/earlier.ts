import { figure, text, type ProblemList } from './param.ts';

/** What an answer has to say of earlier sheets. */
export const earlierProblems = {
  'earlier-cut-otherwise': { byPct: figure, way: text },
  'earlier-scatter-otherwise': { times: figure },
} as const satisfies ProblemList;

/** What it has to say of a machine on which something was changed since everything was cut. */
export const changedProblems = {
  'machine-changed-since': { what: text, day: text },
} as const satisfies ProblemList;

export type EarlierCode = keyof typeof earlierProblems;

export type ChangedCode = keyof typeof changedProblems;
