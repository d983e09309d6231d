import { figure, oneOf, text, type ProblemList } from './param.ts';

/** The strongest setting of a card, and what would help where it is too weak: so much power, or so many passes at it. */
const weakness = {
  powerPct: figure,
  speedMmPerS: figure,
  passes: figure,
  helps: oneOf(['power', 'passes', 'nothing']),
  atPct: figure,
  times: figure,
} as const;

/** Why a card cannot be designed, or what is to be said of one that was. */
export const cardProblems = {
  'card-request-out-of-range': { what: text, value: figure, least: figure, most: figure },
  'card-corners-need-corners': {},
  'card-corners-below-start': { speedMmPerS: figure, startMmPerS: figure },
  'card-too-many-entries': { rungs: figure, most: figure },
  'card-cell-below-bed-gap': { sizeMm: figure, gapMm: figure, neededMm: figure },
  'card-bigger-than-sheet': {
    cells: figure,
    sizeMm: figure,
    sheetWidthMm: figure,
    sheetHeightMm: figure,
  },
  'card-power-above-machine': { powerPct: figure, most: figure },
  'card-tube-readings-odd': {
    odd: oneOf(['falls', 'tiny']),
    currentMa: figure,
    powerPct: figure,
    ratedMa: figure,
  },
  'card-nothing-to-vary': {},
  'card-rung-sped-up-to-ceiling': {
    saidMmPerS: figure,
    powerPct: figure,
    speedMmPerS: figure,
    times: figure,
  },
  'card-rung-rounded': {
    saidMmPerS: figure,
    saidPct: figure,
    speedMmPerS: figure,
    powerPct: figure,
  },
  'card-machine-too-strong': { powerPct: figure, mostMmPerS: figure, times: figure },
  'card-machine-strong-for-it': { powerPct: figure, mostMmPerS: figure, times: figure },
  'card-machine-too-weak': weakness,
  'card-machine-weak-for-it': weakness,
  'card-power-lowered': { powerPct: figure, mostMmPerS: figure, times: figure, askedPct: figure },
  'card-rung-overdrives': { powerPct: figure, ratedPct: figure },
  'card-circle-flatters': {},
  'card-strength-unsaid': {},
  'card-scoring-guessed': {},
  'card-no-trusted-setting': {},
  'card-fewer-rungs-than-asked': { rungs: figure, asked: figure },
  'card-order-only-in-gcode': {},
} as const satisfies ProblemList;

export type CardCode = keyof typeof cardProblems;
