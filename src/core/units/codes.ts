/** What can be the matter with a quantity that a person typed. */
export const unitCodes = [
  'quantity-empty',
  'quantity-not-a-number',
  'quantity-negative',
  'quantity-out-of-range',
  'quantity-ambiguous',
  'quantity-unit-unknown',
  'power-setting-above-100',
] as const;

export type UnitCode = (typeof unitCodes)[number];
