import type { BedCode } from '../../core/problems/bed.ts';
import type { Sentences } from '../shape/sentence.ts';

/** Why the four corners of a bed cannot be drawn. */
export const bedWords = {
  'bed-too-small': {
    message: (p) =>
      `The four clusters need a bed of ${p.neededWidthMm} × ${p.neededHeightMm} mm, and this one is ${p.widthMm} × ${p.heightMm} mm.`,
    remedy: () => 'Ask for fewer or smaller shapes at each place, or for a narrower margin.',
  },
  'bed-wish-out-of-range': {
    message: (p) => `The four corners ask for ${p.what} = ${p.value}.`,
    remedy: (p) => `Choose a whole figure from ${p.least} to ${p.most}.`,
  },
  'bed-cell-below-gap': {
    message: (p) =>
      `A shape of ${p.sizeMm} mm is no bigger than the bed’s gaps of ${p.gapMm} mm: the pieces drop and tip up.`,
    remedy: () => 'Choose bigger shapes, or put the sheet on a finer bed.',
  },
} satisfies Sentences<BedCode>;
