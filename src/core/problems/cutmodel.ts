import { figure, maybe, text, type ProblemList } from './param.ts';

/** Why there is no recommendation. */
export const reasonProblems = {
  'nothing-read-yet': {},
  'all-came-out': { fastestMmPerS: figure, cells: figure },
  'none-came-out': { slowestMmPerS: maybe(figure) },
  'nothing-out-at-this-power': { powerPct: figure },
  'no-power-holds-this-speed': { speedMmPerS: figure, powerPct: figure },
  'slower-than-the-machine': { leastMmPerS: figure },
  'most-cells-left-out': { cells: figure, leftOut: figure },
  'power-not-known': { powerPct: figure },
  'did-not-converge': { points: figure },
  'welds-before-it-cuts': { powerPct: figure, speedMmPerS: figure, outOf100: figure },
} as const satisfies ProblemList;

/** What an answer has to say beside its setting. */
export const warningProblems = {
  'slower-would-not-help': {
    because: text,
    speedMmPerS: figure,
    parts: figure,
    pockets: figure,
    fasterMmPerS: figure,
  },
  'corners-rest-on-prior': {},
  'cut-on-corner-power': { cells: figure, startMmPerS: figure },
  'power-says-nothing': { cells: figure, powers: text },
  'guess-below-slowest-cell': { speedMmPerS: figure, slowestMmPerS: figure },
  'held-to-fastest-out': { speedMmPerS: figure, powerPct: figure },
  'changeover-off-the-card': {
    v50MmPerS: figure,
    powerPct: figure,
    slowestMmPerS: figure,
    fastestMmPerS: figure,
  },
  'speeds-told-little': { speeds: text, count: figure },
  'thin-evidence': { speedMmPerS: figure, evenMmPerS: figure, powerPct: figure, cells: figure },
  'disagreement-is-noise': { speeds: text, count: figure },
  'scatter-rests-on-prior': { cells: figure },
  'flaws-not-learnt': {},
  'tally-stood-in': {},
  'habit-stood-in': {},
  'air-compared': {
    air: text,
    against: text,
    fasterPct: figure,
    lowPct: figure,
    highPct: figure,
    sureFasterPct: figure,
  },
  'asked-overdrives': { powerPct: figure, limitPct: figure, because: text, ratedMa: maybe(figure) },
  'cells-overdrove': { cells: figure, powers: text, ratedMa: maybe(figure) },
  'power-beyond-the-card': { powerPct: figure },
  'flaws-beside-the-promise': { flawsPerMetre: figure },
  'welds-back': {
    welded: figure,
    through: figure,
    speedMmPerS: figure,
    powerPct: figure,
    of100: figure,
    partLengthMm: figure,
    slowestMmPerS: maybe(figure),
  },
  'perhaps-welded': { cells: figure, speeds: text },
} as const satisfies ProblemList;

/** Slips of the hand that the shapes betray. */
export const mistakeProblems = {
  'look-again': { cells: figure, settings: text },
  'behaves-like': { typed: text, like: text },
  'cards-disagree': { odd: text, others: text, byPct: figure, way: text },
} as const satisfies ProblemList;

/** What the next card's sentence may be. */
export const nextCardProblems = {
  'cut-this-card': { gainPct: figure },
  'not-worth-another-sheet': { gainPct: figure },
  'reaches-the-answer': { powerPct: figure, speedMmPerS: figure },
  'first-card': {},
  'double-the-range-faster': { fastestMmPerS: figure },
  'double-the-range-slower': { slowestMmPerS: figure },
} as const satisfies ProblemList;

export type ReasonCode = keyof typeof reasonProblems;

export type WarningCode = keyof typeof warningProblems;

export type MistakeCode = keyof typeof mistakeProblems;

export type NextCardCode = keyof typeof nextCardProblems;
