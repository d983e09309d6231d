import { figure, text, type ProblemList } from './param.ts';

/** Why a kerf or a joint cannot be told. */
export const kerfReasonProblems = {
  'kerf-no-comb': {},
  'kerf-not-positive': { kerfMm: figure },
  'joint-slots-unread': {},
  'joint-slots-mixed': { wideMm: figure, narrowMm: figure },
  'grow-not-a-drawing': {},
  'comb-piece-too-small': {
    widthMm: figure,
    heightMm: figure,
    neededWidthMm: figure,
    neededHeightMm: figure,
  },
  'comb-too-wide': { nominalMm: figure, mostMm: figure, strips: figure, stripMm: figure },
  'slots-too-narrow': { thicknessMm: figure },
} as const satisfies ProblemList;

/** What is to be said beside them. */
export const kerfRemarkProblems = {
  'kerf-one-place': {},
  'kerf-two-combs': {},
  'kerf-without-bar': {},
  'kerf-directions-differ': { acrossMm: figure, upMm: figure },
  'kerf-wider-than-usual': { kerfMm: figure, usualMm: figure },
  'kerf-agrees': { keptMm: figure, hereMm: figure, openMm: figure },
  'kerf-differs': { keptMm: figure, hereMm: figure, openMm: figure },
  'joint-between-slots': { kind: text, drawMm: figure },
  'joint-not-seen': { kind: text },
  'grow-hole-lost': { count: figure, xMm: figure, yMm: figure },
  'grow-gap-lost': { count: figure, xMm: figure, yMm: figure },
  'grow-parts-meet': {},
  'grow-lines-stay': { count: figure },
} as const satisfies ProblemList;

export type KerfReasonCode = keyof typeof kerfReasonProblems;

export type KerfRemarkCode = keyof typeof kerfRemarkProblems;
