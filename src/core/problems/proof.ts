import { figure, type ProblemList } from './param.ts';

/** What a drawing itself is remarked upon for. */
export const drawingRemarkProblems = {
  'proof-open-outline': { count: figure, gapMm: figure },
  'proof-in-pieces': { count: figure, pieces: figure },
  'proof-cut-twice': { lengthMm: figure },
  'proof-outside-first': { count: figure },
  'proof-cuts-close': { pairs: figure, leastMm: figure, thicknessMm: figure },
} as const satisfies ProblemList;

/** Why something is not told of a drawing, or with what care. */
export const proofProblems = {
  ...drawingRemarkProblems,
  'proof-nothing-to-cut': {},
  'proof-no-setting': {},
  'proof-overdrives': { powerPct: figure, ratedPct: figure },
  'proof-power-not-known': { powerPct: figure },
  'proof-faster-than-any-out': { fastestMmPerS: figure, powerPct: figure },
  'proof-below-start-speed': { speedMmPerS: figure, startMmPerS: figure },
  'proof-too-many-to-compare': { segments: figure },
  'proof-too-much-to-plan': {
    lines: figure,
    segments: figure,
    mostLines: figure,
    mostSegments: figure,
  },
} as const satisfies ProblemList;

export type ProofCode = keyof typeof proofProblems;
