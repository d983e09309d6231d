import { z } from 'zod';
import type { FocusRamp } from '../core/focus/focusRamp.ts';
import type { Machine } from '../core/machine/machine.ts';
import type { Setting } from '../core/machine/setting.ts';
import { plainDialect, type GcodeDialect } from '../core/dialect/gcodeDialect.ts';
import type { Outcome } from '../core/problem.ts';
import type { NamedMaterial } from '../core/stock/namedMaterial.ts';
import { parseWith } from './border.ts';
import { label, thicknessMm } from './saved/bounds.ts';
import { focusRampShape } from './saved/focusTest.ts';
import { knownBy, materialKnownInFile } from './saved/materialKnown.ts';
import { settingShape } from './saved/setting.ts';
import { studyFileShape } from './studyFile.ts';

/** What is asked of a focus ramp in a file: `docs/formats/ramp-request.md`. */
export interface RampRequestFile {
  readonly asked: {
    readonly strip: NamedMaterial & { readonly thicknessMm?: number };
    readonly wish: {
      readonly ramp: FocusRamp;
      readonly setting: Setting;
      readonly machine: Machine;
    };
  };
  readonly gcode: GcodeDialect;
}

const shape = z
  .strictObject({
    version: z.literal(1),
    material: label,
    materialKnown: materialKnownInFile,
    thicknessMm: thicknessMm.exactOptional(),
    ramp: focusRampShape,
    setting: z.strictObject({
      powerPct: settingShape.shape.powerPct.positive(),
      speedMmPerS: settingShape.shape.speedMmPerS,
      air: settingShape.shape.air,
    }),
    machine: studyFileShape.shape.machine,
  })
  .transform((file): RampRequestFile => {
    const { material, materialKnown, thicknessMm: thick, ramp, setting, machine } = file;
    return {
      asked: {
        strip: {
          ...knownBy(materialKnown)({ material }),
          ...(thick === undefined ? {} : { thicknessMm: thick }),
        },
        wish: { ramp, setting: { ...setting, passes: 1 }, machine },
      },
      gcode: machine.gcode ?? plainDialect,
    };
  });

/** Reads a request for a focus ramp, strict about keys, types and ranges. */
export const parseRampRequest = (json: unknown): Outcome<RampRequestFile> => parseWith(shape, json);
