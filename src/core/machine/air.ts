/** Air assist: off, a pump with no gauge, or the pressure at the regulator's gauge. Absent means nobody noted it. */
export type Air = 'off' | 'pump' | { readonly kPa: number };

/** A text that is equal for equal air, for grouping. */
export const airKey = (air: Air | undefined): string => {
  if (air === undefined) return 'unknown';
  return typeof air === 'string' ? air : `${String(air.kPa)} kPa`;
};
