import { z } from 'zod';
import { plainDialect, type GcodeDialect } from '../core/dialect/gcodeDialect.ts';
import type { BesideCut } from '../core/marking/markLimits.ts';
import { stripKinds, type MarkStripWish } from '../core/marking/markStrip.ts';
import type { Outcome } from '../core/problem.ts';
import { parseWith } from './border.ts';
import { besideCutInFile, besideCutOf } from './besideCutFile.ts';
import { stripSteps } from './saved/markTest.ts';
import { dialectInFile } from './studyFile.ts';

/** What is asked of a marking strip in a file: `docs/formats/marking-strip-request.md`. */
export interface MarkStripRequestFile {
  readonly asked: BesideCut & { readonly wish: MarkStripWish };
  readonly gcode: GcodeDialect;
}

export const usualSteps = 8;

/** How a strip may be asked for: in a file, and in the address of one. */
export const stripWishBounds = { steps: z.int().min(3).max(stripSteps) } as const;

const shape = z
  .strictObject({
    ...besideCutInFile,
    strip: z.enum(stripKinds),
    steps: stripWishBounds.steps.default(usualSteps),
    gcode: dialectInFile.exactOptional(),
  })
  .transform((file): MarkStripRequestFile => {
    const { strip, steps, lineSpacingMm, machine } = file;
    return {
      asked: { wish: { kind: strip, steps, lineSpacingMm }, ...besideCutOf(file) },
      gcode: file.gcode ?? machine.gcode ?? plainDialect,
    };
  });

/** Reads a request for a marking strip, strict about keys, types and ranges. */
export const parseMarkStripRequest = (json: unknown): Outcome<MarkStripRequestFile> =>
  parseWith(shape, json);
