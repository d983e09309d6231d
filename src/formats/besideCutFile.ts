import { z } from 'zod';
import { usualLineSpacingMm } from '../core/marking/mark.ts';
import type { BesideCut } from '../core/marking/markLimits.ts';
import { cutInFile } from './cutInFile.ts';
import { label, thicknessMm } from './saved/bounds.ts';
import { lineSpacingMm } from './saved/markTest.ts';
import { knownBy, materialKnownInFile } from './saved/materialKnown.ts';
import { studyFileShape } from './studyFile.ts';

/** What every file says that asks of marks beside a cut: the sheet, the setting that cuts it, the machine. */
export const besideCutInFile = {
  version: z.literal(1),
  material: label,
  materialKnown: materialKnownInFile,
  thicknessMm,
  lineSpacingMm: lineSpacingMm.default(usualLineSpacingMm),
  cut: cutInFile,
  machine: studyFileShape.shape.machine,
};

type InFile = Pick<
  z.output<z.ZodObject<typeof besideCutInFile>>,
  'material' | 'materialKnown' | 'thicknessMm' | 'cut' | 'machine'
>;

/** The same as the verbs are asked. */
export const besideCutOf = ({
  material,
  materialKnown,
  thicknessMm: nominalThicknessMm,
  cut,
  machine,
}: InFile): BesideCut => ({
  cut,
  stock: { ...knownBy(materialKnown)({ material }), nominalThicknessMm },
  machine,
});
