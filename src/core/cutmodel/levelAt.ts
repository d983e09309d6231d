import type { Fit } from './fit.ts';
import { knownPower } from './knownPower.ts';
import { meanSdOf } from './posterior.ts';
import { presentLnV50 } from './presentLevel.ts';

/**
 * Where the changeover of the present sheet is believed to lie at a power, ln(mm/s): mean and sd of ln v50, without the scatter of
 * shapes. At a power of which the tube's readings tell nothing: as at the power that the fit is about.
 */
export const levelAt = (
  { compiled, posterior }: Pick<Fit, 'compiled' | 'posterior'>,
  powerPct: number,
): { readonly mean: number; readonly sd: number } => {
  const { lnPower } = knownPower(compiled, powerPct);
  const present = presentLnV50(compiled, posterior);
  return meanSdOf(
    posterior,
    (i) => (present[i] ?? NaN) + (posterior.powerExponent[i] ?? NaN) * lnPower,
  );
};
