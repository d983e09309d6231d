import { fitBinary } from '../../src/num/binaryRegression.ts';
import { normalQuantile } from '../../src/num/normal.ts';
import { cutFixedGrid, gridRows } from './fixedGrid.ts';
import { wantedShare, wantedSurePct, type Method } from './method.ts';

/**
 * The same fixed grid by maximum likelihood: probit in ln speed and ln power, the lower limit of the speed that keeps the
 * share by the delta method. No answer where the data are separated or speed does not matter.
 */
export const gridMl: Method = {
  name: 'grid-ml',
  play: (shop, _random, limits) => {
    const grid = cutFixedGrid(shop, limits.cellsAtMost);
    const fit = fitBinary(gridRows(grid, shop.typicalPowerPct), 'probit');
    if (!fit.ok) return { speedMmPerS: null };
    const [a = 0, b = 0] = fit.coefficients;
    if (!(b < 0)) return { speedMmPerS: null };
    const lnSpeed = (normalQuantile(wantedShare) - a) / b;
    // Var of (z − a)/b by the delta method; power drops out at the usual power.
    const [[vaa = 0, vab = 0] = [], [, vbb = 0] = []] = fit.covariance;
    const sd = Math.sqrt(vaa + 2 * lnSpeed * vab + lnSpeed * lnSpeed * vbb) / Math.abs(b);
    const lower = lnSpeed - normalQuantile(wantedSurePct / 100) * sd;
    return { speedMmPerS: Number.isFinite(lower) ? Math.exp(lower) : null };
  },
};
