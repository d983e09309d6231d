import { z } from 'zod';
import type { KerfTest } from '../../core/kerf/kerfTest.ts';
import type { KerfResult } from '../../core/kerf/tellKerf.ts';
import type { Outcome } from '../../core/problem.ts';
import { combMeasureShape, combShape, slotsShape } from '../kerfFile.ts';
import { thicknessMm } from './bounds.ts';
import { testShape, type MachineTestKind } from './machineTest.ts';
import { provenSettingShape } from './provenSetting.ts';
import { settingShape } from './setting.ts';

/** Measured combs and slots as saved and sent. */
export const kerfTestShape = testShape({
  setting: settingShape,
  stock: provenSettingShape.shape.holdsFor.omit({ machineId: true, machine: true }),
  combs: z.array(combShape).max(50),
  measure: combMeasureShape,
  slots: slotsShape.exactOptional(),
  tongueMm: thicknessMm.exactOptional(),
}) satisfies z.ZodType<KerfTest>;

export const kerfTestKind: MachineTestKind<KerfTest, typeof kerfTestShape, Outcome<KerfResult>> = {
  shape: kerfTestShape,
  about: {
    list: 'Measured combs and slots of settings, the latest first',
    one: 'a kerf test',
    says: 'what was measured; what it tells is said by calc/kerf',
  },
  reader: async () => (await import('../../core/kerf/kerfTest.ts')).kerfTestSays,
};
