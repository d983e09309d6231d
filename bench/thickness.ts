import type { VisibleWorkshop } from './workshop.ts';

/** Mean of the caliper readings, or the label where nobody measured. */
export const thicknessOf = ({ stock }: Pick<VisibleWorkshop, 'stock'>): number =>
  stock.measuredThicknessMm.length > 0
    ? stock.measuredThicknessMm.reduce((a, b) => a + b, 0) / stock.measuredThicknessMm.length
    : stock.nominalThicknessMm;
