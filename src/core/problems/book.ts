import { figure, text, type ProblemList } from './param.ts';

/** How the sheet or the machine at hand differs from what a proven setting holds for. */
export const bookProblems = {
  'holds-for-other-machine': { kept: text, here: text },
  'holds-for-another-machine': {},
  'holds-for-other-material': { kept: text, here: text },
  'holds-for-material-named-otherwise': { kept: text, here: text },
  'holds-for-other-thickness': {
    keptMm: figure,
    hereMm: figure,
    speedChangePct: figure,
    which: text,
  },
  'holds-for-other-caliper': {
    keptMm: figure,
    hereMm: figure,
    speedChangePct: figure,
    which: text,
  },
  'holds-for-other-batch': { kept: text, here: text },
  'holds-for-batch-not-named': {},
  'holds-for-other-sheet': { kept: text, here: text },
  'holds-for-sheet-not-named': {},
  'holds-for-power-above-limit': { powerPct: figure, limitPct: figure },
  'holds-for-speed-out-of-range': { speedMmPerS: figure, least: figure, most: figure },
} as const satisfies ProblemList;

export type BookCode = keyof typeof bookProblems;
