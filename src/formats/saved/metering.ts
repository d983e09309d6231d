import { z } from 'zod';
import type { Outcome } from '../../core/problem.ts';
import type { MeterReport } from '../../core/metering/meterReport.ts';
import type { Metering } from '../../core/metering/metering.ts';
import { currentMa, pct, waterC } from './bounds.ts';
import { testShape, type MachineTestKind } from './machineTest.ts';

/** A metering as saved and sent: its readings in the order in which they were read, repeats and all. */
export const meteringShape = testShape({
  ratedCurrentMa: currentMa.positive().exactOptional(),
  readings: z
    .array(z.strictObject({ powerPct: pct, currentMa }))
    .min(1)
    .max(500),
  waterC: waterC.exactOptional(),
}) satisfies z.ZodType<Metering>;

export const meteringKind: MachineTestKind<Metering, typeof meteringShape, Outcome<MeterReport>> = {
  shape: meteringShape,
  about: {
    list: 'What the milliammeter said, the latest metering first',
    one: 'a metering',
    says: 'its curve with bands, where it fires, where rated current is reached',
  },
  reader: async () => (await import('../../core/metering/meterReport.ts')).meterReport,
};
