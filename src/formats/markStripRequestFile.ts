import { z } from 'zod';
import { plainDialect, type GcodeDialect } from '../core/dialect/gcodeDialect.ts';
import type { KeptStock } from '../core/book/keptStock.ts';
import type { Machine } from '../core/machine/machine.ts';
import type { Setting } from '../core/machine/setting.ts';
import { usualLineSpacingMm } from '../core/marking/mark.ts';
import { stripKinds, type MarkStripWish } from '../core/marking/markStrip.ts';
import type { Outcome } from '../core/problem.ts';
import { parseWith } from './border.ts';
import { cutInFile } from './cutInFile.ts';
import { label, thicknessMm } from './saved/bounds.ts';
import { lineSpacingMm } from './saved/markTest.ts';
import { knownBy, materialKnownInFile } from './saved/materialKnown.ts';
import { dialectInFile, studyFileShape } from './studyFile.ts';

/** What is asked of a marking strip in a file: `docs/formats/marking-strip-request.md`. */
export interface MarkStripRequestFile {
  readonly asked: {
    readonly wish: MarkStripWish;
    readonly cut: Setting;
    readonly stock: KeptStock;
    readonly machine: Machine;
  };
  readonly gcode: GcodeDialect;
}

export const usualSteps = 8;

/** How a strip may be asked for: in a file, and in the address of one. */
export const stripWishBounds = { steps: z.int().min(3).max(16) } as const;

const shape = z
  .strictObject({
    version: z.literal(1),
    material: label,
    materialKnown: materialKnownInFile,
    thicknessMm,
    strip: z.enum(stripKinds),
    steps: stripWishBounds.steps.default(usualSteps),
    lineSpacingMm: lineSpacingMm.default(usualLineSpacingMm),
    cut: cutInFile,
    machine: studyFileShape.shape.machine,
    gcode: dialectInFile.exactOptional(),
  })
  .transform((file): MarkStripRequestFile => {
    const { material, materialKnown, strip, steps, machine, cut } = file;
    return {
      asked: {
        wish: { kind: strip, steps, lineSpacingMm: file.lineSpacingMm },
        cut,
        stock: { ...knownBy(materialKnown)({ material }), nominalThicknessMm: file.thicknessMm },
        machine,
      },
      gcode: file.gcode ?? machine.gcode ?? plainDialect,
    };
  });

/** Reads a request for a marking strip, strict about keys, types and ranges. */
export const parseMarkStripRequest = (json: unknown): Outcome<MarkStripRequestFile> =>
  parseWith(shape, json);
