import { priorMedianV50MmPerS } from '../../src/core/cutmodel/priors.ts';
import type { Grade } from '../../src/core/reading/grade.ts';
import type { BinaryRow } from '../../src/num/separation.ts';
import { thicknessOf } from '../thickness.ts';
import type { VisibleWorkshop } from '../workshop.ts';
import { layoutOf } from './method.ts';

/** The usual card, cut row by row. */
export interface FixedGrid {
  readonly speeds: readonly number[];
  readonly powers: readonly number[];
  /** Row by row: all powers of the first speed, then the next. */
  readonly grades: readonly Grade[];
}

/** The usual card has 25 cells, one more than 24: so one more than allowed is let pass. */
const sideFor = (cellsAtMost: number): number => {
  const side = Math.floor(Math.sqrt(cellsAtMost + 1));
  return Math.max(3, side - ((side + 1) % 2));
};

/**
 * As many speeds from half to one and a half times the expected changeover as powers within 10 about the usual one: five
 * of each where 24 cells are allowed, else the odd number that fits, so that the usual power is among them.
 * Common practice, no source.
 */
export const cutFixedGrid = (shop: VisibleWorkshop, cellsAtMost: number): FixedGrid => {
  const middle = priorMedianV50MmPerS(
    shop.stock.material,
    thicknessOf(shop),
    shop.typicalPowerPct / 100,
  );
  const side = sideFor(cellsAtMost);
  const evenly = Array.from({ length: side }, (_, i) => (2 * i) / (side - 1) - 1);
  const speeds = evenly.map((part) => Math.max(0.5, Math.round(2 * (1 + part / 2) * middle) / 2));
  const powers = evenly.map((part) => shop.typicalPowerPct + Math.round(10 * part));
  const settings = speeds.flatMap((speedMmPerS) =>
    powers.map((powerPct) => ({ powerPct, speedMmPerS })),
  );
  const places = settings.map((_, i) => i);
  return { speeds, powers, grades: shop.cutCard(layoutOf(shop, settings, places)) };
};

/** The grid as rows of a regression on ln speed and ln power about the usual one. */
export const gridRows = (
  { speeds, powers, grades }: FixedGrid,
  usualPowerPct: number,
): readonly BinaryRow[] =>
  speeds.flatMap((speed, s) =>
    powers.map((power, p) => ({
      x: [1, Math.log(speed), Math.log(power / usualPowerPct)],
      trials: 1,
      successes: grades[s * powers.length + p] === 'out' ? 1 : 0,
    })),
  );
