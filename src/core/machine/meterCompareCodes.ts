/** Why two meterings cannot be held against each other, and what is to be minded where they can. */
export const meterCompareCodes = [
  'meterings-of-other-machines',
  'meterings-without-overlap',
  'meterings-too-noisy',
  'meterings-rated-otherwise',
  'meterings-water-differs',
] as const;

export type MeterCompareCode = (typeof meterCompareCodes)[number];
