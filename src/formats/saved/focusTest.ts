import { z } from 'zod';
import type { Outcome } from '../../core/problem.ts';
import type { FocusRamp } from '../../core/focus/focusRamp.ts';
import type { FocusEstimate, FocusReadings, FocusTest } from '../../core/focus/focusTest.ts';
import { between } from './bounds.ts';
import { testShape, type MachineTestKind } from './machineTest.ts';
import { bounds } from './limits.ts';

const mm = between(bounds.rampMm);

/** A ramp as saved and sent. Whether it may be used is said by the core. */
export const focusRampShape = z.strictObject({
  lengthMm: mm,
  blockMm: mm,
  nozzleGapMm: mm,
}) satisfies z.ZodType<FocusRamp>;

const readings = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('fades'),
    lines: z
      .array(
        z.strictObject({
          /** Null: it still showed at that end. */
          fromMm: mm.nullable(),
          toMm: mm.nullable(),
          dose: z.number().positive().max(1e6).exactOptional(),
        }),
      )
      .min(1)
      .max(20),
  }),
  z.strictObject({
    kind: z.literal('widths'),
    widths: z
      .array(z.strictObject({ alongMm: mm, widthMm: z.number().positive().max(50) }))
      .min(1)
      .max(200),
  }),
]) satisfies z.ZodType<FocusReadings>;

/** A focus test as saved and sent. */
export const focusTestShape = testShape({
  ramp: focusRampShape,
  readings,
  gaugeMm: mm.exactOptional(),
}) satisfies z.ZodType<FocusTest>;

export const focusTestKind: MachineTestKind<
  FocusTest,
  typeof focusTestShape,
  Outcome<FocusEstimate>
> = {
  shape: focusTestShape,
  about: {
    list: 'Where the focus was found, the latest test first',
    one: 'a focus test',
    says: 'the gap, the depth of focus, and what the gauge is off by',
  },
  reader: async () => (await import('../../core/focus/findFocus.ts')).findFocus,
};
