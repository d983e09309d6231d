import { isOfSameStock, type StockOnMachine } from '../book/keptStock.ts';
import { settingKey, type Setting } from '../machine/setting.ts';
import type { MachineTest, Unkept } from '../machineTests.ts';
import { andThen, problemOf, type Outcome, type Problem } from '../problem.ts';
import { acceptMaterial } from '../stock/acceptMaterial.ts';
import type { CombMeasure, KerfComb } from './kerfComb.ts';
import type { SlotRead } from './joints.ts';
import { tellKerf, type KerfResult } from './tellKerf.ts';

/** Combs and slots of one setting on one sheet, as they were measured on one day. */
export interface KerfTest extends MachineTest {
  readonly setting: Setting;
  readonly stock: StockOnMachine['stock'];
  readonly combs: readonly KerfComb[];
  readonly measure: CombMeasure;
  readonly slots?: readonly SlotRead[];
  /** Thickness of the tongue that was tried in them, mm. */
  readonly tongueMm?: number;
}

/** What was measured, before anybody keeps it. */
export type UnkeptKerfTest = Unkept<KerfTest>;

/** What it says. Refuses: a refused material, and what `tellKerf` refuses. */
export const kerfTestSays = (
  test: Pick<KerfTest, 'stock' | 'combs' | 'measure' | 'slots' | 'tongueMm'>,
): Outcome<KerfResult> => andThen(acceptMaterial(test.stock), () => tellKerf(test));

/** What a kerf is of: a setting on a material and thickness, on a machine. */
export interface KerfSubject extends StockOnMachine {
  readonly setting: Setting;
}

/**
 * The tests that are of one setting and material, whatever batch: of equal setting, material and nominal thickness, on one
 * machine where both are known. In the order given.
 */
export const kerfTestsOf = (
  subject: KerfSubject,
  tests: readonly KerfTest[],
): readonly KerfTest[] =>
  tests.filter(
    (test) =>
      settingKey(test.setting) === settingKey(subject.setting) && isOfSameStock(test, subject),
  );

/**
 * Whether a kerf agrees with one that was kept: as far apart as both are open together is no difference (two intervals of 95 %
 * added in quadrature).
 */
export const kerfAgreement = (
  kept: { readonly kerfMm: number; readonly expandedMm: number },
  here: { readonly kerfMm: number; readonly expandedMm: number },
): Problem => {
  const byMm = here.kerfMm - kept.kerfMm;
  const openMm = Math.hypot(kept.expandedMm, here.expandedMm);
  const told = {
    keptMm: Number(kept.kerfMm.toFixed(3)),
    hereMm: Number(here.kerfMm.toFixed(3)),
    openMm: Number(openMm.toFixed(3)),
  };
  return Math.abs(byMm) <= openMm
    ? problemOf('kerf-agrees', told)
    : problemOf('kerf-differs', told);
};
