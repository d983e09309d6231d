import { z } from 'zod';
import { combPlaceCounts } from '../core/kerf/combSheet.ts';
import { jointKinds } from '../core/kerf/joints.ts';
import { kerfDoubts } from '../core/kerf/kerf.ts';
import { kerfCardKinds } from '../core/kerf/kerfCard.ts';
import { combDirections } from '../core/kerf/kerfComb.ts';
import { kerfWishBounds } from '../formats/kerfCardRequestFile.ts';
import { drawingTextKinds } from '../formats/drawingText.ts';
import { kerfFileShape } from '../formats/kerfFile.ts';
import { readingLimits } from '../formats/readingLimits.ts';
import { cornerRule, cornersWithin } from '../formats/saved/setting.ts';
import { lengthMm, pct, speedMmPerS, thicknessMm } from '../formats/saved/bounds.ts';
import { kerfAddresses } from './laterAddresses.ts';
import { cutAsked } from './cutAsked.ts';
import { byRampKind } from './focus.ts';
import { saidInFull, saidProblem } from './problem.ts';
import { route } from './route.ts';

const figure = z.coerce.number();

/** A comb or slot card asked for as a file. */
export const kerfCardQuery = z
  .strictObject({
    card: z.enum(kerfCardKinds),
    ...cutAsked,
    thicknessMm: figure.pipe(thicknessMm),
    /** What a line is scored with; absent: a guess. */
    scorePct: figure.pipe(pct.positive()).exactOptional(),
    scoreMmPerS: figure.pipe(speedMmPerS).exactOptional(),
    /** Of a comb: the piece, in how many places, along which axis strips are narrow (absent: both). */
    pieceWidthMm: figure.pipe(lengthMm).exactOptional(),
    pieceHeightMm: figure.pipe(lengthMm).exactOptional(),
    places: z.enum(combPlaceCounts.map(String)).exactOptional(),
    direction: z.enum(combDirections).exactOptional(),
    strips: figure.pipe(kerfWishBounds.strips).exactOptional(),
    /** Of a slot card: the kerf where it is known. */
    kerfMm: figure.pipe(kerfWishBounds.kerfMm).exactOptional(),
  })
  .refine(cornersWithin, cornerRule);

const kerf = z.strictObject({
  kerfMm: z.number(),
  standardMm: z.number(),
  /** Null: without end. */
  degrees: z.number().nullable(),
  expandedMm: z.number(),
  coverageFactor: z.number(),
  doubts: z.array(
    z.strictObject({ from: z.enum(kerfDoubts), uMm: z.number(), degrees: z.number().nullable() }),
  ),
});

/** What combs and slots tell, as `calc kerf` prints it. */
export const kerfReply = z.strictObject({
  version: z.literal(1),
  kerf: kerf
    .extend({
      byDirection: z.array(kerf.extend({ direction: z.enum(combDirections) })),
      byCombMm: z.array(z.number()),
    })
    .exactOptional(),
  growMm: z.number().exactOptional(),
  joints: z
    .array(
      z.strictObject({
        kind: z.enum(jointKinds),
        allowanceMm: z.number(),
        drawMm: z.number(),
        toMm: z.number(),
        isSeen: z.boolean(),
        clearanceMm: z.number().exactOptional(),
      }),
    )
    .exactOptional(),
  remarks: z.array(saidProblem),
});

/** The routes of kerf and joints: apart from the others, since the page works them out itself. */
export const kerfApi = {
  kerfCardFile: route({
    ...kerfAddresses.kerfCardFile,
    summary: 'A comb card or a slot card for the machine, or its sheet for the printer',
    params: byRampKind,
    query: kerfCardQuery,
  }),
  calcKerf: route({
    ...kerfAddresses.calcKerf,
    summary: 'The kerf from measured combs, and slots to draw for joints; nothing is stored',
    body: kerfFileShape,
    reply: kerfReply,
  }),
  growDrawing: route({
    ...kerfAddresses.growDrawing,
    summary:
      'A drawing with outlines moved outward and holes inward by half the kerf, and what it loses by that; nothing is stored',
    body: z.strictObject({
      /** What stands in the file: SVG or DXF. */
      text: z.string().max(readingLimits.bytes),
      kerfMm: kerfWishBounds.kerfMm,
      as: z.enum(drawingTextKinds),
    }),
    reply: z.strictObject({
      version: z.literal(1),
      growMm: z.number(),
      /** The drawing as it was moved. */
      text: z.string(),
      parts: z.number().int(),
      rest: z.number().int(),
      lost: z.array(
        z.strictObject({ what: z.enum(['hole', 'gap']), at: z.tuple([z.number(), z.number()]) }),
      ),
      remarks: z.array(saidInFull),
    }),
  }),
} as const;
