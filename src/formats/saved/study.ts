import { z } from 'zod';
import type { Ask } from '../../core/cutmodel/cutStudy.ts';
import type { PromiseWish } from '../../core/reading/promise.ts';
import type { SavedStudy, Study } from '../../core/study/study.ts';
import type { Aim } from '../../core/cutmodel/aims.ts';
import { id, isoTime, lengthMm, pct, speedMmPerS } from './bounds.ts';
import { cardShape } from './card.ts';
import { machineShape } from './machine.ts';
import { readingEventShape } from './readingEvent.ts';
import { startedOrderShape } from './startedOrder.ts';
import { stockShape } from './stock.ts';
import { habitShape, recordedTallyShape } from './tally.ts';
import { machineChangesShape } from './workshopMachine.ts';

export const promiseShape = z.strictObject({
  outOf100: z.number().gt(50).lt(100),
  surePct: z.number().min(50).lt(100),
  partLengthMm: lengthMm,
  for: z.enum(['sheet', 'batch', 'newBatch']),
}) satisfies z.ZodType<PromiseWish>;

export const aimShape = z.enum(['fastest', 'gentlest', 'cleanest']) satisfies z.ZodType<Aim>;

export const askShape = z.strictObject({
  powerPct: pct.exactOptional(),
  speedMmPerS: speedMmPerS.exactOptional(),
}) satisfies z.ZodType<Ask>;

/** What a study says beside its cards, events and tallies. */
export const studyHead = {
  id,
  stock: stockShape,
  machineId: id,
  promise: promiseShape,
  aim: aimShape,
  ask: askShape,
  habit: habitShape.exactOptional(),
};

/** A study as saved: it names its machine. */
export const savedStudyShape = z.strictObject({
  version: z.literal(1),
  isExample: z.boolean(),
  createdAt: isoTime,
  ...studyHead,
  stripOf: id.exactOptional(),
  orders: z.array(startedOrderShape).exactOptional(),
  tallies: z.array(recordedTallyShape),
  cards: z.array(cardShape),
  events: z.array(readingEventShape),
}) satisfies z.ZodType<SavedStudy>;

/** A study as sent, with its machine as it stands now. */
export const studyShape = savedStudyShape.extend({
  machine: machineShape,
  machineChanges: machineChangesShape,
}) satisfies z.ZodType<Study>;
