import { z } from 'zod';
import { machineChangeKinds } from '../core/machine/machineChange.ts';
import { code, id, isoTime, label, lengthMm, thicknessMm } from '../formats/saved/bounds.ts';
import { cardShape } from '../formats/saved/card.ts';
import { settingShape } from '../formats/saved/setting.ts';
import { watchAddresses } from './laterAddresses.ts';
import { byEntry } from './book.ts';
import { saidProblem } from './problem.ts';
import { route } from './route.ts';

const share = z.number().min(0).max(1);
const shift = z.strictObject({ mean: z.number(), sd: z.number() });

/** One thing to look at, with the cautions that go with it. */
const look = z.strictObject({
  name: z.string(),
  how: z.string(),
  cautions: z.array(z.string()),
});

/** Whether a proven setting still holds. Sentences are ready to be read. */
export const watchReply = z.strictObject({
  standing: z.enum(['nothing-yet', 'as-foreseen', 'alarm', 'recovered']),
  message: z.string(),
  /** What is stated: one alarm without cause in about so many orders. */
  ordersPerFalseAlarm: z.number(),
  /** Limit of the average score in standard deviations once it has settled, and of the cumulated shortfall. */
  limits: z.strictObject({ average: z.number(), shortfall: z.number() }),
  /** Oldest first. */
  points: z.array(
    z.strictObject({
      id: z.string(),
      at: isoTime,
      kind: z.enum(['order', 'strip']),
      batch: label.exactOptional(),
      parts: z.number().int(),
      notOut: z.number().int(),
      spoilt: z.number().int(),
      foreseenNotOut: z.number(),
      score: z.number(),
      average: z.number(),
      shortfall: z.number(),
      alarm: z.boolean(),
    }),
  ),
  /** At which point another batch was cut for the first time, and how it is called. */
  batchChanges: z.array(
    z.strictObject({ atPoint: z.number().int(), from: label.exactOptional(), to: label }),
  ),
  /** Before which point something was changed on the machine. */
  machineChanges: z.array(
    z.strictObject({
      atPoint: z.number().int(),
      at: isoTime,
      what: z.enum(machineChangeKinds),
    }),
  ),
  slipping: z
    .strictObject({
      sincePoint: z.number().int(),
      speedLossPct: z.number(),
      lowPct: z.number(),
      highPct: z.number(),
    })
    .exactOptional(),
  /** How strips are judged, and how often that is right. */
  rule: z.string(),
  /** The last read first. */
  strips: z.array(
    z.strictObject({
      studyId: id,
      code,
      of: z.enum(['reference', 'new-batch']),
      batch: label.exactOptional(),
      at: isoTime,
      cellCount: z.number().int(),
      readCount: z.number().int(),
      verdict: z.enum(['unread', 'as-before', 'retune', 'cut-a-card']),
      message: z.string(),
      more: z.string(),
      /** Absent: unread, or a card is needed. */
      setting: settingShape.exactOptional(),
      surePct: z.number().exactOptional(),
    }),
  ),
  cause: z
    .strictObject({
      share: z.strictObject({ laser: share, wood: share, both: share, neither: share }),
      pointsAt: z.enum(['laser', 'wood', 'both', 'neither', 'unclear']),
      message: z.string(),
      more: z.string(),
      /** In ln of speed. */
      laser: shift,
      wood: shift,
    })
    .exactOptional(),
  /** Cheapest first. */
  looks: z.array(look),
});

export const cutStripBody = z.strictObject({
  id: id.exactOptional(),
  of: z.enum(['reference', 'new-batch']),
  batch: label.exactOptional(),
  thicknessReadingsMm: z.array(thicknessMm).max(60).exactOptional(),
  cells: z.number().int().min(4).max(6).exactOptional(),
  sheetMm: z.tuple([lengthMm, lengthMm]).exactOptional(),
});

/** Routes that watch the book. Apart from the others so that the page's first view need not carry their shapes. */
export const watchApi = {
  watchEntry: route({
    ...watchAddresses.watchEntry,
    summary: 'Whether a kept setting still holds, by its orders and strips, and if not, why',
    params: byEntry,
    reply: watchReply,
  }),
  cutStrip: route({
    ...watchAddresses.cutStrip,
    summary: 'Design a check strip for a new batch, or for the reference sheet',
    params: byEntry,
    body: cutStripBody,
    reply: z.strictObject({
      studyId: id,
      card: cardShape,
      remarks: z.array(saidProblem),
    }),
  }),
} as const;
