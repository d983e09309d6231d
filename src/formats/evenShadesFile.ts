import { z } from 'zod';
import type { Setting } from '../core/machine/setting.ts';
import {
  shadesAtMost,
  toneReadings,
  usualShades,
  type EvenShades,
  type ShadesRead,
} from '../core/marking/evenShades.ts';
import type { BesideCut } from '../core/marking/markLimits.ts';
import { done, type Outcome, type Problem } from '../core/problem.ts';
import type { Said, Say } from './answerFile.ts';
import { besideCutInFile, besideCutOf } from './besideCutFile.ts';
import { parseWith } from './border.ts';
import { cutInFile } from './cutInFile.ts';
import { label } from './saved/bounds.ts';
import { lightness, stripSteps } from './saved/markTest.ts';

/** A step as `mark` prints it, with what was seen on it. */
const step = cutInFile.safeExtend({
  step: label.exactOptional(),
  lightness: lightness.exactOptional(),
});

/** What is read of a strip of shades, in a file: `docs/formats/shades.md`. */
export const evenShadesFileShape = z.strictObject({
  ...besideCutInFile,
  steps: z.array(step).min(1).max(stripSteps),
  readBy: z.enum(toneReadings).default('meter'),
  shades: z.int().min(2).max(shadesAtMost).default(usualShades),
});

/** The same as it is asked. */
export interface EvenShadesFile extends BesideCut {
  readonly strip: { readonly lineSpacingMm: number; readonly settings: readonly Setting[] };
  readonly read: ShadesRead;
}

/** Reads what was seen on a strip of shades, strict about keys, types and ranges. */
export const parseEvenShades = (json: unknown): Outcome<EvenShadesFile> => {
  const parsed = parseWith(evenShadesFileShape, json);
  if (!parsed.ok) return parsed;
  const { lineSpacingMm, steps, readBy, shades } = parsed.value;
  return done({
    ...besideCutOf(parsed.value),
    strip: { lineSpacingMm, settings: steps.map(settingOf) },
    read: { lightness: steps.map((one) => one.lightness), by: readBy, count: shades },
  });
};

const settingOf = ({
  powerPct,
  minPowerPct,
  speedMmPerS,
  passes,
  air,
}: z.output<typeof step>): Setting => ({
  ...{ powerPct, speedMmPerS, passes },
  ...(minPowerPct === undefined ? {} : { minPowerPct }),
  ...(air === undefined ? {} : { air }),
});

/** Even shades as they are printed. */
export interface EvenShadesResultFile {
  readonly version: 1;
  /** What more energy does. */
  readonly more: 'darker' | 'paler';
  readonly lineSpacingMm: number;
  readonly shades: readonly (Setting & {
    readonly lightness: number;
    readonly standardL: number;
    readonly expandedL: number;
  })[];
  readonly coverageFactor: 2;
  readonly remarks: readonly Said[];
  readonly cautions: readonly string[];
}

export const evenShadesResultFile = (
  { curve, shades, ofMaterial }: EvenShades & { readonly ofMaterial: readonly Problem[] },
  lineSpacingMm: number,
  words: { readonly say: Say; readonly cautions: readonly string[] },
): EvenShadesResultFile => ({
  version: 1,
  more: curve.turns === 1 ? 'paler' : 'darker',
  lineSpacingMm,
  shades: shades.map(({ setting, lightness: tone, standardL }) => ({
    ...setting,
    ...{ lightness: tone, standardL, expandedL: 2 * standardL },
  })),
  coverageFactor: 2,
  remarks: ofMaterial.map((remark) => {
    const { code, message } = words.say(remark);
    return { code, message };
  }),
  cautions: words.cautions,
});
