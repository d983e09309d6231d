import { z } from 'zod';
import type { CutStudy, StudyCell } from '../core/cutmodel/cutStudy.ts';
import type { Setting } from '../core/machine/setting.ts';
import type { Outcome } from '../core/problem.ts';
import { referenceLengthMm, type PromiseWish } from '../core/reading/promise.ts';
import type { Tally } from '../core/reading/tally.ts';
import { parseWith } from './border.ts';
import { count, isoTime, label, lengthMm, speedMmPerS } from './saved/bounds.ts';
import { gradeShape, spoiltShape } from './saved/readingEvent.ts';
import { settingShape } from './saved/setting.ts';
import { countsNothing, countsSomething } from './saved/tally.ts';
import { knownBy, materialKnownInFile } from './saved/materialKnown.ts';
import { studyFileShape, studyOfFile } from './studyFile.ts';

/** A kept setting with its orders and strips in a file: `docs/formats/watch.md`. */
export interface WatchFile {
  readonly setting: Setting;
  readonly promise: PromiseWish;
  /** Absent: what the study foresees at the setting. */
  readonly foreseen?: { readonly outOf100Mean: number; readonly surePct: number };
  /** Oldest first. */
  readonly orders: readonly (Tally & { readonly at: string })[];
  /** Oldest first; their places among the orders are said by `at`. */
  readonly strips: readonly {
    readonly of: 'reference' | 'new-batch';
    readonly batch?: string;
    readonly at: string;
    readonly cells: readonly StudyCell[];
  }[];
  /** What the setting was proven by. */
  readonly study?: CutStudy;
  /** How the tube's curve moved since an earlier metering. */
  readonly meter?: (typeof meterMoves)[number];
}

const meterMoves = ['lower', 'higher', 'bent', 'fires-later', 'fires-sooner', 'same'] as const;
/** Things that nobody dated stand in the order in which they were written down, before those that were. */
const undated = '1970-01-01T00:00:00.000Z';

const orderShape = z
  .strictObject({
    at: isoTime.default(undated),
    out: count,
    hangs: count.default(0),
    stays: count.default(0),
    spoilt: count.default(0),
    partLengthMm: lengthMm.exactOptional(),
    batch: label.exactOptional(),
    sheet: label.exactOptional(),
  })
  .refine(countsSomething, countsNothing);

const stripShape = z.strictObject({
  of: z.enum(['reference', 'new-batch']),
  batch: label.exactOptional(),
  at: isoTime.default(undated),
  cells: z
    .array(
      z.strictObject({
        speedMmPerS,
        grade: gradeShape.exactOptional(),
        spoilt: spoiltShape.exactOptional(),
      }),
    )
    .min(1)
    .max(24),
  cellLengthMm: lengthMm.default(referenceLengthMm),
});

const shape = z
  .strictObject({
    version: z.literal(1),
    setting: settingShape,
    promise: studyFileShape.shape.promise,
    foreseen: z
      .strictObject({
        outOf100: z.number().min(0).max(100),
        surePct: z.number().min(0).max(100),
      })
      .exactOptional(),
    orders: z.array(orderShape).max(2000).default([]),
    strips: z.array(stripShape).max(20).default([]),
    study: studyFileShape.transform(studyOfFile).exactOptional(),
    materialKnown: materialKnownInFile,
    meter: z.enum(meterMoves).exactOptional(),
  })
  .refine(({ foreseen, study }) => foreseen !== undefined || study !== undefined, {
    path: ['foreseen'],
    message: 'either what was foreseen or the study that foresaw it is needed',
  })
  .refine(({ strips, study }) => strips.length === 0 || study !== undefined, {
    path: ['study'],
    message: 'strips are judged by the study that the setting came from',
  })
  .transform(
    ({ setting, promise, foreseen, orders, strips, study, materialKnown, ...rest }): WatchFile => ({
      ...rest,
      ...(study === undefined
        ? {}
        : { study: { ...study, stock: knownBy(materialKnown)(study.stock) } }),
      setting,
      promise,
      ...(foreseen === undefined
        ? {}
        : { foreseen: { outOf100Mean: foreseen.outOf100, surePct: foreseen.surePct } }),
      orders: orders.map((order) => ({ partLengthMm: promise.partLengthMm, ...order, setting })),
      strips: strips.map(({ cells, cellLengthMm, ...strip }) => ({
        ...strip,
        cells: cells.map((cell) => ({
          ...setting,
          ...cell,
          shapeLengthMm: cellLengthMm,
          sheet: `strip ${strip.of}`,
          ...(strip.batch === undefined ? {} : { batch: strip.batch }),
        })),
      })),
    }),
  );

/** Reads a file of a watched setting, strict about keys, types and ranges. */
export const parseWatchFile = (json: unknown): Outcome<WatchFile> => parseWith(shape, json);
