import { z } from 'zod';
import { shadesAtMost, toneReadings } from '../../core/marking/evenShades.ts';
import { tapeKinds, type Mark } from '../../core/marking/mark.ts';
import type { markTestSays, MarkTest } from '../../core/marking/markTest.ts';
import { between, pct } from './bounds.ts';
import { bounds } from './limits.ts';
import { testShape, type MachineTestKind } from './machineTest.ts';
import { provenSettingShape } from './provenSetting.ts';
import { settingShape } from './setting.ts';

export const lineSpacingMm = between(bounds.lineSpacingMm);

/** A setting that fires. */
const setting = settingShape.safeExtend({ powerPct: pct.positive() });

/** A mark as saved and sent. */
export const markShape = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('score'), setting }),
  z.strictObject({ kind: z.literal('engrave'), setting, lineSpacingMm }),
  z.strictObject({ kind: z.literal('tape'), tape: z.enum(tapeKinds) }),
]) satisfies z.ZodType<Mark>;

/** Steps of a strip at most. */
export const stripSteps = 16;

/** CIE L*, 0 black to 100 white. */
export const lightness = between(bounds.lightness);

/** A strip as it was marked, and which of its steps were seen and chosen, from 0. */
const stripReadShape = z
  .strictObject({
    settings: z.array(setting).min(1).max(stripSteps),
    palest: z.int().min(0).max(15),
    wanted: z.int().min(0).max(15),
  })
  .refine(({ settings, palest, wanted }) => palest <= wanted && wanted < settings.length, {
    path: ['wanted'],
    message: 'the chosen step is one of the strip, and none paler than the palest seen',
  });

/** How light the shades of a strip came out. */
const shadesOfStripShape = z
  .strictObject({
    settings: z.array(setting).min(1).max(stripSteps),
    lineSpacingMm,
    lightness: z.array(lightness.nullable()),
    by: z.enum(toneReadings),
    count: z.int().min(2).max(shadesAtMost),
  })
  .refine((read) => read.lightness.length === read.settings.length, {
    path: ['lightness'],
    message: 'one for each step of the strip, null where it was not read',
  });

/** A mark beside a cut, with its sheet, as saved and sent. */
export const markTestShape = testShape({
  cut: settingShape,
  stock: provenSettingShape.shape.holdsFor.omit({ machineId: true, machine: true }),
  mark: markShape,
  strip: stripReadShape.exactOptional(),
  shades: shadesOfStripShape.exactOptional(),
}) satisfies z.ZodType<MarkTest>;

export const markTestKind: MachineTestKind<
  MarkTest,
  typeof markTestShape,
  ReturnType<typeof markTestSays>
> = {
  shape: markTestShape,
  about: {
    list: 'Marks beside cuts (score, engrave, tape) by sheet, the latest first',
    one: 'a mark beside a cut',
    says: 'its setting and what it was tried on',
  },
  reader: async () => (await import('../../core/marking/markTest.ts')).markTestSays,
};
