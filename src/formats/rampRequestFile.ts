import { z } from 'zod';
import type { RampCardRequest } from '../core/card/rampCard.ts';
import { plainDialect, type GcodeDialect } from '../core/machine/gcodeDialect.ts';
import type { Outcome } from '../core/problem.ts';
import type { NamedMaterial } from '../core/stock/acceptMaterial.ts';
import { parseWith } from './border.ts';
import { label } from './saved/bounds.ts';
import { focusRampShape } from './saved/focusTest.ts';
import { knownBy, materialKnownInFile } from './saved/materialKnown.ts';
import { settingShape } from './saved/setting.ts';
import { studyFileShape } from './studyFile.ts';

/** What is asked of a focus ramp in a file: `docs/formats/ramp-request.md`. */
export interface RampRequestFile {
  readonly named: NamedMaterial;
  readonly request: RampCardRequest;
  readonly gcode: GcodeDialect;
}

const shape = z
  .strictObject({
    version: z.literal(1),
    material: label,
    materialKnown: materialKnownInFile,
    ramp: focusRampShape,
    setting: z.strictObject({
      powerPct: settingShape.shape.powerPct.positive(),
      speedMmPerS: settingShape.shape.speedMmPerS,
      air: settingShape.shape.air,
    }),
    machine: studyFileShape.shape.machine,
  })
  .transform(({ material, materialKnown, ramp, setting, machine }): RampRequestFile => ({
    named: knownBy(materialKnown)({ material }),
    request: { ramp, setting: { ...setting, passes: 1 }, machine },
    gcode: machine.gcode ?? plainDialect,
  }));

/** Reads a request for a focus ramp, strict about keys, types and ranges. */
export const parseRampRequest = (json: unknown): Outcome<RampRequestFile> => parseWith(shape, json);
