import type { KeptStock } from '../../../core/book/keptStock.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import type { MarkStripWish } from '../../../core/marking/markStrip.ts';
import { pageMarkApi } from '../../../wire/pageLaterApi.ts';
import { addressOf } from '../../../wire/route.ts';
import { unitsInAddress } from '../../state/units.ts';

/** A strip beside a cut, of which a file is wanted. */
export interface StripToFile {
  readonly wish: MarkStripWish;
  readonly cut: Setting;
  readonly stock: KeptStock;
  readonly machineId: string | undefined;
}

/** Where a marking strip is made into a file of a kind. */
export const markStripAddress = (
  kind: string,
  { wish, cut, stock, machineId }: StripToFile,
): string =>
  addressOf(
    pageMarkApi.markStripFile,
    { kind },
    {
      material: stock.material,
      materialKnown: stock.materialKnown === true ? 'true' : undefined,
      thicknessMm: stock.measuredThicknessMm ?? stock.nominalThicknessMm,
      powerPct: cut.powerPct,
      minPowerPct: cut.minPowerPct,
      speedMmPerS: cut.speedMmPerS,
      passes: cut.passes,
      air: typeof cut.air === 'object' ? cut.air.kPa : cut.air,
      strip: wish.kind,
      steps: wish.steps,
      lineSpacingMm: wish.lineSpacingMm,
      machineId,
      units: unitsInAddress(),
    },
  );
