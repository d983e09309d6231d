import { z } from 'zod';
import { stripKinds } from '../core/marking/markStrip.ts';
import { evenShadesFileShape } from '../formats/evenShadesFile.ts';
import { marksFileShape } from '../formats/marksFile.ts';
import { stripWishBounds } from '../formats/markStripRequestFile.ts';
import { lineSpacingMm } from '../formats/saved/markTest.ts';
import { thicknessMm } from '../formats/saved/bounds.ts';
import { cornerRule, cornersWithin, settingShape } from '../formats/saved/setting.ts';
import { markAddresses } from './laterAddresses.ts';
import { cutAsked } from './cutAsked.ts';
import { byRampKind } from './focus.ts';
import { saidProblem } from './problem.ts';
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

const cautions = z.array(z.string());

const begun = z.strictObject({
  /** Null: there is nowhere, and why. */
  begin: settingShape.safeExtend({ lineSpacingMm: lineSpacingMm.exactOptional() }).nullable(),
  reason: saidProblem.exactOptional(),
});

/** The routes of marks beside cuts, but for those that every test of a machine has. */
export const markApi = {
  markStripFile: route({
    ...markAddresses.markStripFile,
    summary: 'A marking strip for the machine, or its sheet for the printer',
    params: byRampKind,
    query: markStripQuery,
  }),
  calcMarks: route({
    ...markAddresses.calcMarks,
    summary:
      'Where to begin with a score and an engraving beside a cut; guesses, and nothing is stored',
    body: marksFileShape,
    reply: z.strictObject({
      version: z.literal(1),
      score: begun,
      engrave: begun,
      how: z.string(),
      remarks: z.array(saidProblem),
      cautions,
    }),
  }),
  calcShades: route({
    ...markAddresses.calcShades,
    summary:
      'Settings for shades that lie evenly apart, from a strip as it was read; nothing is stored',
    body: evenShadesFileShape,
    reply: z.strictObject({
      version: z.literal(1),
      more: z.enum(['darker', 'paler']),
      lineSpacingMm,
      shades: z.array(
        settingShape.safeExtend({
          lightness: z.number(),
          standardL: z.number(),
          expandedL: z.number(),
        }),
      ),
      coverageFactor: z.literal(2),
      remarks: z.array(saidProblem),
      cautions,
    }),
  }),
} as const;
