import { fitBiasReduced } from '../../src/num/binaryRegression.ts';
import { doseAt } from '../../src/num/doseLimits.ts';
import { cutFixedGrid, gridRows } from './fixedGrid.ts';
import { wantedShare, wantedSurePct, type Method } from './method.ts';

/**
 * The fixed grid by Firth's logistic regression (Firth 1993, Biometrika 80:27; Heinze & Schemper 2002, Stat. Med.
 * 21:2409), which has an estimate also where the data are separated; the lower limit of the speed that keeps the share
 * is Fieller's (Finney 1971). No answer where Fieller's limits are no interval.
 */
export const gridFirth: Method = {
  name: 'grid-firth',
  play: (shop, _random, limits) => {
    const grid = cutFixedGrid(shop, limits.cellsAtMost);
    const fit = fitBiasReduced(gridRows(grid, shop.typicalPowerPct), 'logit', 'jeffreys');
    if (!fit.ok || !((fit.coefficients[1] ?? 0) < 0)) return { speedMmPerS: null };
    // A one-sided limit is the lower end of two-sided ones that leave out as much on either side.
    const { fiellerLimits } = doseAt(fit, wantedShare, (2 * wantedSurePct) / 100 - 1);
    return { speedMmPerS: fiellerLimits === null ? null : Math.exp(fiellerLimits[0]) };
  },
};
