import { z } from 'zod';
import { testShapeNames } from '../core/card/testShapes.ts';
import type { Outcome } from '../core/problem.ts';
import type { CardWish } from '../core/study/cardRequestFor.ts';
import { parseWith } from './border.ts';
import { plainDialect, type GcodeDialect } from './gcode/gcodeDialect.ts';
import { code, label, lengthMm, pct, speedMmPerS } from './saved/bounds.ts';
import { airShape, settingShape } from './saved/setting.ts';
import { studyFileShape, type StudyFile } from './studyFile.ts';

/** What is asked of a card in a file: `docs/formats/card-request.md`. */
export interface CardRequestFile {
  readonly version: 1;
  /** What is known of the stock and the machine, and what was cut so far. */
  readonly study: StudyFile;
  readonly wish: Omit<CardWish, 'code'> & { readonly code?: string };
  readonly gcode: GcodeDialect;
}

/** One line of G-code as the user wrote it; a `%` or a line break would begin something else. */
const gcodeLine = z
  .string()
  .max(256)
  .regex(/^[^%\p{Cc}]*$/u, 'one line without % and control characters');

const dialectShape = z.strictObject({
  opening: z
    .array(gcodeLine)
    .max(100)
    .default([...plainDialect.opening]),
  closing: z
    .array(gcodeLine)
    .max(100)
    .default([...plainDialect.closing]),
  sAtFullPower: z.number().positive().max(1_000_000).default(plainDialect.sAtFullPower),
  power: z.enum(['constant', 'speed-following']).default(plainDialect.power),
  airOn: z.enum(['M7', 'M8']).default(plainDialect.airOn),
});

/** A setting as people list it: one pass where none is said. */
const rung = z
  .strictObject({ ...settingShape.shape, passes: settingShape.shape.passes.default(1) })
  .refine((setting) => (setting.minPowerPct ?? 0) <= setting.powerPct, {
    path: ['minPowerPct'],
    message: 'power in corners may not exceed powerPct',
  });

const shape = z
  .strictObject({
    version: z.literal(1),
    study: studyFileShape,
    vary: z.enum(['speed', 'power', 'speed-and-power', 'passes', 'corners']).exactOptional(),
    rungs: z.array(rung).min(1).max(200).exactOptional(),
    powerPct: pct.positive().exactOptional(),
    speedMmPerS: speedMmPerS.exactOptional(),
    settingsAtMost: z.int().min(1).max(1000).exactOptional(),
    entriesAtMost: z.int().min(1).max(1000).exactOptional(),
    cellsEach: z.int().min(1).max(1000).exactOptional(),
    shape: z.enum([...testShapeNames]).exactOptional(),
    sizeMm: lengthMm.exactOptional(),
    sheetMm: z.tuple([lengthMm, lengthMm]).exactOptional(),
    seed: z.int().min(0).max(4_294_967_295).exactOptional(),
    air: airShape.exactOptional(),
    scoring: rung.exactOptional(),
    trusted: rung.exactOptional(),
    outline: z.enum(['last', 'none']).exactOptional(),
    order: z.enum(['by-rung', 'free']).exactOptional(),
    code: code.exactOptional(),
    batch: label.exactOptional(),
    sheet: label.exactOptional(),
    gcode: dialectShape.prefault({}),
  })
  .transform(({ version, study, gcode, ...wish }): CardRequestFile => ({
    version,
    study,
    wish,
    gcode,
  }));

/** Reads a request for a card, strict about keys, types and ranges. Whatever is left out is common practice. */
export const parseCardRequest = (json: unknown): Outcome<CardRequestFile> => parseWith(shape, json);
