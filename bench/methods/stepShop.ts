import type { BenchCell, VisibleWorkshop } from '../workshop.ts';

/** A workshop without scatter, for tests: everything up to one speed comes out. It writes down what was cut. */
export const stepShop = (
  fastestOutMmPerS: number,
): { readonly shop: VisibleWorkshop; readonly cut: BenchCell[] } => {
  const cut: BenchCell[] = [];
  return {
    cut,
    shop: {
      machine: { maxPowerPct: 90, speedRangeMmPerS: [0.5, 200] },
      stock: { material: 'plywood', nominalThicknessMm: 3, measuredThicknessMm: [3] },
      bed: { widthMm: 900, heightMm: 600 },
      typicalPowerPct: 30,
      cutCard: (cells) => {
        cut.push(...cells);
        return cells.map(({ speedMmPerS }) => (speedMmPerS <= fastestOutMmPerS ? 'out' : 'stays'));
      },
    },
  };
};
