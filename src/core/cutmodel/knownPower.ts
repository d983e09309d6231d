import type { CompiledStudy } from './compileStudy.ts';

/**
 * The power that is asked for, and ln(P/P0) there; where the tube does not fire at it, or nobody knows how strong it is there, the
 * power that the fit is about. What is said of a power is then true of the power that is named.
 */
export const knownPower = (
  { lnPowerOf, p0Pct }: Pick<CompiledStudy, 'lnPowerOf' | 'p0Pct'>,
  askedPct: number,
): { readonly powerPct: number; readonly lnPower: number } => {
  const lnPower = lnPowerOf(askedPct);
  return lnPower === null ? { powerPct: p0Pct, lnPower: 0 } : { powerPct: askedPct, lnPower };
};
