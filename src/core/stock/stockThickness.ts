import type { Stock } from './stock.ts';

/** The thickness to reckon with, in mm: the mean of the caliper readings, or what the label says when nobody measured. */
export const stockThicknessMm = ({ thicknessReadingsMm, nominalThicknessMm }: Stock): number => {
  if (thicknessReadingsMm.length === 0) return nominalThicknessMm;
  return (
    thicknessReadingsMm.reduce((sum, reading) => sum + reading, 0) / thicknessReadingsMm.length
  );
};
