import type { KerfCard } from '../../../core/kerf/kerfCard.ts';
import type { KerfSubject } from '../../../core/kerf/kerfTest.ts';
import { pageKerfApi } from '../../../wire/pageLaterApi.ts';
import { addressOf } from '../../../wire/route.ts';
import { unitsInAddress } from '../../state/units.ts';

/** Where a comb or slot card is made into a file of a kind. `kerfMm`: what its slots are laid around. */
export const kerfCardAddress = (
  kind: string,
  { sheet, setting, scoring, thicknessMm }: KerfCard,
  subject: KerfSubject,
  kerfMm?: number,
): string => {
  const { stock, machineId } = subject;
  const { air } = setting;
  const directions = sheet.kind === 'comb' ? new Set(sheet.combs.map((c) => c.direction)) : null;
  return addressOf(
    pageKerfApi.kerfCardFile,
    { kind },
    {
      card: sheet.kind,
      material: stock.material,
      materialKnown: stock.materialKnown === true ? 'true' : undefined,
      thicknessMm,
      powerPct: setting.powerPct,
      minPowerPct: setting.minPowerPct,
      speedMmPerS: setting.speedMmPerS,
      passes: setting.passes,
      air: typeof air === 'object' ? air.kPa : air,
      scorePct: scoring.powerPct,
      scoreMmPerS: scoring.speedMmPerS,
      machineId,
      ...(sheet.kind === 'comb'
        ? {
            pieceWidthMm: sheet.widthMm,
            pieceHeightMm: sheet.heightMm,
            places: new Set(sheet.combs.map(({ label }) => label.slice(0, -1))).size,
            direction: directions?.size === 1 ? [...directions][0] : undefined,
          }
        : { direction: sheet.direction, kerfMm }),
      units: unitsInAddress(),
    },
  );
};
