import { figure, text, type ProblemList } from './param.ts';

/** Why the four corners of a bed cannot be drawn. */
export const bedProblems = {
  'bed-too-small': {
    neededWidthMm: figure,
    neededHeightMm: figure,
    widthMm: figure,
    heightMm: figure,
  },
  'bed-wish-out-of-range': { what: text, value: figure, least: figure, most: figure },
  'bed-cell-below-gap': { sizeMm: figure, gapMm: figure },
} as const satisfies ProblemList;

export type BedCode = keyof typeof bedProblems;
