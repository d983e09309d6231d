import { z } from 'zod';
import { stripKinds } from '../core/marking/markStrip.ts';
import { stripWishBounds } from '../formats/markStripRequestFile.ts';
import { lineSpacingMm } from '../formats/saved/markTest.ts';
import { thicknessMm } from '../formats/saved/bounds.ts';
import { cornerRule, cornersWithin } from '../formats/saved/setting.ts';
import { markAddresses } from './addresses.ts';
import { cutAsked } from './cutAsked.ts';
import { byRampKind } from './focus.ts';
import { route } from './route.ts';

const figure = z.coerce.number();

/** A marking strip asked for as a file: the cut that it stands beside, as of a comb card, and what is wanted. */
export const markStripQuery = z
  .strictObject({
    ...cutAsked,
    thicknessMm: figure.pipe(thicknessMm),
    strip: z.enum(stripKinds),
    steps: figure.pipe(stripWishBounds.steps).exactOptional(),
    lineSpacingMm: figure.pipe(lineSpacingMm).exactOptional(),
  })
  .refine(cornersWithin, cornerRule);

/** The routes of marks beside cuts, but for those that every test of a machine has. */
export const markApi = {
  markStripFile: route({
    ...markAddresses.markStripFile,
    summary: 'A marking strip for the machine, or its sheet for the printer',
    params: byRampKind,
    query: markStripQuery,
  }),
} as const;
