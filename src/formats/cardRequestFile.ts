import { z } from 'zod';
import { testShapeNames } from '../core/card/testShapes.ts';
import { plainDialect, type GcodeDialect } from '../core/dialect/gcodeDialect.ts';
import type { Outcome } from '../core/problem.ts';
import type { CardWish } from '../core/study/cardRequestKnowing.ts';
import { parseWith } from './border.ts';
import { code, label, lengthMm, pct, speedMmPerS } from './saved/bounds.ts';
import { knownBy, materialKnownInFile } from './saved/materialKnown.ts';
import { airShape, cornerRule, cornersWithin, settingShape } from './saved/setting.ts';
import { dialectInFile, studyFileShape, studyOfFile, type StudyFile } from './studyFile.ts';

/** What is asked of a card in a file: `docs/formats/card-request.md`. */
export interface CardRequestFile {
  readonly version: 1;
  /** What is known of the stock and the machine, and what was cut so far. */
  readonly study: StudyFile;
  readonly wish: Omit<CardWish, 'code'> & { readonly code?: string };
  readonly gcode: GcodeDialect;
}

/** A setting as people list it: one pass where none is said. */
const rung = z
  .strictObject({ ...settingShape.shape, passes: settingShape.shape.passes.default(1) })
  .refine(cornersWithin, cornerRule);

const shape = z
  .strictObject({
    version: z.literal(1),
    study: studyFileShape.transform(studyOfFile),
    materialKnown: materialKnownInFile,
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
    overdrive: z.boolean().exactOptional(),
    scoring: rung.exactOptional(),
    trusted: rung.exactOptional(),
    outline: z.enum(['last', 'none']).exactOptional(),
    order: z.enum(['by-rung', 'free']).exactOptional(),
    code: code.exactOptional(),
    batch: label.exactOptional(),
    sheet: label.exactOptional(),
    gcode: dialectInFile.exactOptional(),
  })
  .transform(({ version, study, materialKnown, gcode, ...wish }): CardRequestFile => ({
    version,
    study: { ...study, stock: knownBy(materialKnown)(study.stock) },
    wish,
    gcode: gcode ?? study.machine.gcode ?? plainDialect,
  }));

/** Reads a request for a card, strict about keys, types and ranges. Whatever is left out is common practice. */
export const parseCardRequest = (json: unknown): Outcome<CardRequestFile> => parseWith(shape, json);
