import { figure, type ProblemList } from './param.ts';

/** Why a ramp cannot be used, or what it was that it did not show. */
export const focusProblems = {
  'ramp-meets-nozzle': { blockMm: figure, nozzleGapMm: figure, mostMm: figure },
  'ramp-too-short': { lengthMm: figure, leastMm: figure },
  'ramp-too-flat': { blockMm: figure, leastMm: figure },
  'ramp-too-steep': { lengthMm: figure, blockMm: figure, leastMm: figure },
  'ramp-no-room': { gapMm: figure, leastMm: figure },
  'ramp-setting-out-of-range': {
    powerPct: figure,
    speedMmPerS: figure,
    mostPct: figure,
    slowest: figure,
    fastest: figure,
  },
  'focus-readings-too-few': {},
  'focus-reading-off-strip': { alongMm: figure, lengthMm: figure },
  'focus-beyond-high-end': { alongMm: figure },
  'focus-beyond-low-end': { alongMm: figure },
  'focus-line-never-fades': {},
  'focus-widths-level': {},
  'focus-near-high-end': {},
  'focus-near-low-end': {},
  'focus-lines-disagree': {},
  'focus-depth-unknown': {},
  'focus-gap-too-small': { gapMm: figure, leastMm: figure },
} as const satisfies ProblemList;

export type FocusCode = keyof typeof focusProblems;
