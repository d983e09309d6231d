import { z } from 'zod';
import type { CutStudy, StudyCell } from '../core/cutmodel/cutStudy.ts';
import { plainDialect } from '../core/dialect/gcodeDialect.ts';
import { undescribedMachine } from '../core/machine/machine.ts';
import { mostOrderParts } from '../core/order/order.ts';
import type { OrderWish } from '../core/order/orderAnswer.ts';
import { orderAims, usualPlanCosts, type PlanWish } from '../core/plan/planWish.ts';
import { done, refused, type Outcome } from '../core/problem.ts';
import { defaultPromise, referenceLengthMm } from '../core/reading/promise.ts';
import { parseWith } from './border.ts';
import type { FormatCode } from '../core/problems/files.ts';
import {
  count,
  currentMa,
  label,
  lengthMm,
  pct,
  speedMmPerS,
  thicknessMm,
} from './saved/bounds.ts';
import { gcodeDialectShape } from './saved/gcodeDialect.ts';
import { machineShape } from './saved/machine.ts';
import { knownBy, materialKnownInFile, materialKnownShape } from './saved/materialKnown.ts';
import { edgeShape, gradeShape, spoiltShape, tapedShape } from './saved/readingEvent.ts';
import { cornerRule, cornersWithin, settingShape } from './saved/setting.ts';
import { acceptNotOutOf100, orderParts, planCostsShape } from './saved/startedOrder.ts';

/** A study file, and what it wishes of the next card. */
export interface StudyFile extends CutStudy {
  readonly version: 1;
  readonly cellsWanted?: number;
  readonly settingsAtMost?: number;
  /** What is asked of an order of so many parts. */
  readonly order?: OrderWish;
  /** An order that is cut sheet by sheet, and how far it is. */
  readonly plan?: PlanWish;
}

/** The power at which something was cut: nothing is cut at 0 %. */
const cutPct = pct.positive();

const asTyped = {
  powerPct: cutPct,
  speedMmPerS,
  passes: settingShape.shape.passes.default(1),
  minPowerPct: pct.exactOptional(),
  air: settingShape.shape.air,
  batch: label.exactOptional(),
  sheet: label.exactOptional(),
  thicknessMm: thicknessMm.exactOptional(),
};

const cellShape = z
  .strictObject({
    ...asTyped,
    shapeLengthMm: lengthMm.exactOptional(),
    grade: gradeShape.exactOptional(),
    spoilt: spoiltShape.exactOptional(),
    edge: edgeShape.exactOptional(),
    taped: tapedShape.exactOptional(),
  })
  .refine(cornersWithin, cornerRule)
  .transform(({ grade, edge, taped, ...cell }): StudyCell => {
    // A spoilt cell says nothing about its setting: a grade beside the reason is not evidence.
    if (grade === undefined || cell.spoilt !== undefined) return cell;
    if (grade !== 'out' || edge === undefined) return { ...cell, grade };
    return { ...cell, grade, edge, ...(taped === undefined ? {} : { taped }) };
  });

const tallyShape = z
  .strictObject({
    ...asTyped,
    out: count,
    hangs: count.default(0),
    stays: count.default(0),
    spoilt: count.default(0),
    partLengthMm: lengthMm.default(referenceLengthMm),
  })
  .refine(cornersWithin, cornerRule)
  .transform(({ powerPct, minPowerPct, speedMmPerS: speed, passes, air, ...counted }) => ({
    setting: {
      powerPct,
      ...(minPowerPct === undefined ? {} : { minPowerPct }),
      speedMmPerS: speed,
      passes,
      ...(air === undefined ? {} : { air }),
    },
    ...counted,
  }));

/** How the machine wants its G-code; what is left out is plain. */
export const dialectInFile = z.strictObject({
  opening: gcodeDialectShape.shape.opening.default([...plainDialect.opening]),
  closing: gcodeDialectShape.shape.closing.default([...plainDialect.closing]),
  sAtFullPower: gcodeDialectShape.shape.sAtFullPower.default(plainDialect.sAtFullPower),
  power: gcodeDialectShape.shape.power.default(plainDialect.power),
  airOn: gcodeDialectShape.shape.airOn.default(plainDialect.airOn),
});

/** Tube points may stand in any order: a list typed from a notebook often does. */
const machineInFile = machineShape.extend({
  maxPowerPct: pct.positive().default(undescribedMachine.maxPowerPct),
  speedRangeMmPerS: machineShape.shape.speedRangeMmPerS.default([
    ...undescribedMachine.speedRangeMmPerS,
  ]),
  tubePoints: z
    .array(z.strictObject({ powerPct: pct, currentMa }))
    .max(200)
    .transform((points) => points.toSorted((a, b) => a.powerPct - b.powerPct))
    .exactOptional(),
  gcode: dialectInFile.exactOptional(),
});

const figure = z.number().nonnegative().max(1e9);

const orderInFile = z.strictObject({
  parts: z.int().min(1).max(mostOrderParts),
  partsPerSheet: z.int().min(1).max(mostOrderParts).exactOptional(),
  partLengthMm: lengthMm.exactOptional(),
  setting: z
    .strictObject({
      powerPct: cutPct,
      speedMmPerS,
      passes: settingShape.shape.passes.default(1),
      minPowerPct: pct.exactOptional(),
    })
    .refine(cornersWithin, cornerRule)
    .exactOptional(),
  cost: z
    .strictObject({
      perHour: figure.exactOptional(),
      tubePrice: figure.exactOptional(),
      tubeHoursAtRated: figure.positive().exactOptional(),
      lifeExponent: z.number().nonnegative().max(10).exactOptional(),
      sheetPerPart: figure.exactOptional(),
      knifeSeconds: figure.exactOptional(),
    })
    .exactOptional(),
});

const planInFile = z.strictObject({
  parts: orderParts,
  partsPerSheet: orderParts,
  partLengthMm: lengthMm,
  done: z.int().min(0).default(0),
  wish: z.enum(orderAims).default('promise'),
  acceptNotOutOf100: acceptNotOutOf100.default(3),
  costS: planCostsShape.default(usualPlanCosts),
});

/** The schema of a study file, for files that hold one. */
export const studyFileShape = z.strictObject({
  version: z.literal(1),
  machine: machineInFile.prefault({}),
  stock: z.strictObject({
    material: label,
    materialKnown: materialKnownShape.exactOptional(),
    thicknessMm,
  }),
  materialKnown: materialKnownInFile,
  cells: z.array(cellShape).max(5000).default([]),
  tallies: z.array(tallyShape).max(5000).default([]),
  habit: z
    .strictObject({
      powerPct: cutPct,
      speedMmPerS,
      comesOut: z.enum(['always', 'nearly', 'often-not']),
    })
    .exactOptional(),
  promise: z
    .strictObject({
      outOf100: z.number().gt(50).lt(100).default(defaultPromise.outOf100),
      surePct: z.number().min(50).lt(100).default(defaultPromise.surePct),
      partLengthMm: lengthMm.default(defaultPromise.partLengthMm),
      for: z.enum(['sheet', 'batch', 'newBatch']).default(defaultPromise.for),
    })
    .default(defaultPromise),
  ask: z
    .strictObject({ powerPct: cutPct.exactOptional(), speedMmPerS: speedMmPerS.exactOptional() })
    .default({}),
  cellsWanted: z.int().min(1).max(500).exactOptional(),
  settingsAtMost: z.int().min(1).max(100).exactOptional(),
  order: orderInFile.exactOptional(),
  plan: planInFile.exactOptional(),
});

/** What a study file says of itself stands with its stock from here on. */
export const studyOfFile = ({
  materialKnown,
  ...study
}: z.output<typeof studyFileShape>): StudyFile => ({
  ...study,
  stock: knownBy(materialKnown)(study.stock),
});

/**
 * Reads a study file (docs/formats/study.md), strict about keys, types and ranges. Tube points may stand in any order.
 * Where the file says nothing: the promise is 97 in 100 at 95 % for a part of 60 mm and this batch, one pass, a machine
 * that nobody has described.
 */
export const parseCutStudy = (json: unknown): Outcome<StudyFile> =>
  parseWith(studyFileShape.transform(studyOfFile), json);

/** A study file that asks for the plan of an order. Refuses: what `parseCutStudy` does; `plan-not-said`. */
export const parsePlanStudy = (
  json: unknown,
): Outcome<{ readonly study: StudyFile; readonly wish: PlanWish }> => {
  const study = parseCutStudy(json);
  if (!study.ok) return study;
  const { plan } = study.value;
  return plan === undefined
    ? refused('plan-not-said' satisfies FormatCode)
    : done({ study: study.value, wish: plan });
};

/** The same the other way: a study as its file. `parseCutStudy(cutStudyFile(s))` is `s` again. */
export const cutStudyFile = (study: Omit<StudyFile, 'version'>): object => ({
  version: 1,
  ...study,
  tallies: study.tallies.map(({ setting, ...counted }) => ({ ...setting, ...counted })),
});
