import { z } from 'zod';
import type { BedTest } from '../../core/bed/bedTest.ts';
import type { BedReport } from '../../core/bed/bedVerdict.ts';
import { bedPlaces } from '../../core/bed/place.ts';
import { id } from './bounds.ts';
import { bedShape } from './machine.ts';
import { testShape, type MachineTestKind } from './machineTest.ts';
import { gradeShape } from './readingEvent.ts';
import { settingShape } from './setting.ts';

const lnSpeed = z.number().positive().max(5);

/** A reading of the four corners as saved and sent. */
export const bedTestShape = testShape({
  bed: bedShape,
  setting: settingShape,
  scatter: z.strictObject({ sigma: lnSpeed, hangBand: lnSpeed }),
  cells: z
    .array(z.strictObject({ id, place: z.enum(bedPlaces), grade: gradeShape }))
    .min(1)
    .max(400),
}) satisfies z.ZodType<BedTest>;

export const bedTestKind: MachineTestKind<
  BedTest,
  typeof bedTestShape,
  { readonly ok: true; readonly value: BedReport }
> = {
  shape: bedTestShape,
  about: {
    list: 'Readings of the four corners of the bed, the latest first',
    one: 'a reading of the four corners',
    says: 'where the bed is weak, how surely, what to look at',
  },
  reader: async () => {
    const { bedTestReport } = await import('../../core/bed/bedTest.ts');
    return (test) => ({ ok: true, value: bedTestReport(test) });
  },
};
