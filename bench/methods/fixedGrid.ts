import { priorMedianV50MmPerS } from '../../src/core/cutmodel/priors.ts';
import type { Grade } from '../../src/core/reading/grade.ts';
import { thicknessOf } from '../thickness.ts';
import type { VisibleWorkshop } from '../workshop.ts';
import { layOut } from './method.ts';

/** The usual card of 25, cut row by row. */
export interface FixedGrid {
  readonly speeds: readonly number[];
  readonly powers: readonly number[];
  /** Row by row: all powers of the first speed, then the next. */
  readonly grades: readonly Grade[];
}

/**
 * Five speeds from half to one and a half times the expected changeover, five powers about the usual one.
 * Common practice, no source.
 */
export const cutFixedGrid = (shop: VisibleWorkshop): FixedGrid => {
  const middle = priorMedianV50MmPerS(
    shop.stock.material,
    thicknessOf(shop),
    shop.typicalPowerPct / 100,
  );
  const speeds = [0.5, 0.75, 1, 1.25, 1.5].map((factor) =>
    Math.max(0.5, Math.round(2 * factor * middle) / 2),
  );
  const powers = [-10, -5, 0, 5, 10].map((offset) => shop.typicalPowerPct + offset);
  const settings = speeds.flatMap((speedMmPerS) =>
    powers.map((powerPct) => ({ powerPct, speedMmPerS })),
  );
  const places = settings.map((_, i) => i);
  return { speeds, powers, grades: shop.cutCard(layOut(shop, settings, places)) };
};
