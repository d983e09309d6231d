import { z } from 'zod';

import { colourDifference } from '../../num/colourDifference.ts';
import {
  labFromSrgb8,
  linearFromSrgb8,
  srgbAsPrinted,
  srgbExact,
  xyzFromSrgb8,
} from '../../num/colour.ts';
import { byKind } from './byKind.ts';

const triple = z.tuple([z.number(), z.number(), z.number()]);

const srgb = z.object({ rgb8: triple }).transform(({ rgb8 }) => ({
  linear: rgb8.map(linearFromSrgb8),
  withIecMatrix: {
    XYZ: xyzFromSrgb8(rgb8, srgbAsPrinted),
    Lab: labFromSrgb8(rgb8, srgbAsPrinted),
  },
  withExactMatrix: { XYZ: xyzFromSrgb8(rgb8, srgbExact), Lab: labFromSrgb8(rgb8, srgbExact) },
}));

const ciede2000 = z
  .object({ lab1: triple, lab2: triple })
  .transform(({ lab1, lab2 }) => ({ computed: colourDifference(lab1, lab2) }));

/** Colours and their differences. */
export const t13 = byKind({ srgb, ciede2000 });
