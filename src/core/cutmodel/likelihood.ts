import type { Link } from './links.ts';
import type { Layout, Model, ModelPriors, Observation } from './model.ts';
import { addBounds, addSlopes, furtherMargin } from './margins.ts';
import {
  blankSlopes,
  leastProbability,
  logProbabilityAndSlopes,
  probabilityOf,
} from './observed.ts';
import { asRead, careOf } from './reading.ts';
import { blankParameters, readParameters, readSlopes, type Parameters } from './parameters.ts';

const leastProduct = 1e-290;

/** ln of prior times likelihood, up to the constant of N(0, I), and its gradient in z. */
export interface Target {
  readonly layout: Layout;
  readonly priors: ModelPriors;
  readonly value: (z: Float64Array) => number;
  readonly logDensity: (z: Float64Array, gradient: Float64Array) => number;
}

/**
 * Joins model and link. `value` costs two table look-ups and a logarithm an observation (~50 ns), `logDensity` about three
 * times that. Misreading keeps every probability away from 0; where ε = 0 the exact distribution function is used.
 */
export const target = (model: Model, layout: Layout, link: Link): Target => {
  const { priors, observations, habit } = model;
  const ofCell = careOf(priors, { counted: false });
  const ofCount = careOf(priors, { counted: true });
  const hasMore = observations.some(
    (o) =>
      o.lnThickness !== 0 || o.lnPasses !== 0 || o.lnCorners !== 0 || o.air >= 0 || o.batch >= 0,
  );
  const parameters = blankParameters();
  const slopes = blankSlopes();
  const here = { layout, priors, p: parameters, slopes };
  const bounded = priors.powerExponentMayBeNegative !== true;
  const quick = priors.misreading > 0;
  const cdf = quick ? link.quickCdf : link.cdf;

  const value = (z: Float64Array): number => {
    readParameters(z, layout, priors, parameters);
    if (bounded && parameters.powerExponent <= 0) return -Infinity;
    let sum = 0;
    for (let i = 0; i < layout.size; i += 1) sum -= 0.5 * (z[i] ?? NaN) ** 2;
    if (habit) {
      const off = parameters.lnV50 + parameters.powerExponent * habit.lnPower - habit.mean;
      sum -= 0.5 * (off / habit.sd) ** 2;
    }
    const p = parameters;
    const inverseSigma = 1 / p.sigma;
    const { lnV50, powerExponent: b, hangBand } = p;
    let product = 1;
    let lengthM = 0;
    let flaw = 0;
    for (const o of observations) {
      let margin = lnV50 + b * o.lnPower - o.lnSpeed;
      if (layout.sheet >= 0 && o.sheet >= 0)
        margin += p.sheetSd * (z[layout.sheet + o.sheet] ?? NaN);
      if (hasMore) margin += furtherMargin(o, z, layout, p, priors.airSd);
      if (o.lengthM !== lengthM) {
        lengthM = o.lengthM;
        flaw = 1 - Math.exp(-p.flawsPerMetre * lengthM);
      }
      let probability: number;
      const { misread, overlooked } = o.counted ? ofCount : ofCell;
      if (o.lengths === 1 && o.outcome !== 'not-out' && o.outcome !== 'flaw') {
        // What most cells are, written out: the inner loop of every answer.
        const x = margin * inverseSigma;
        const y = (margin + p.cornersExponent * o.lnCorners + hangBand) * inverseSigma;
        const grade =
          o.outcome === 'out'
            ? (1 - flaw) * cdf(x)
            : 0.5 * overlooked * flaw +
              (1 - flaw) *
                (o.outcome === 'stays' ? cdf(-y) : x > 0 ? cdf(-x) - cdf(-y) : cdf(y) - cdf(x));
        probability = Math.max(leastProbability, asRead(misread, grade));
      } else probability = probabilityOf(o, margin, p, flaw, cdf, o.counted ? ofCount : ofCell);
      if (o.count > 1) sum += o.count * Math.log(probability);
      else {
        // One logarithm for many cells, as long as their product keeps its digits.
        if (product * probability < leastProduct) {
          sum += Math.log(product);
          product = 1;
        }
        product *= probability;
      }
    }
    sum += Math.log(product);
    // So far out that a parameter overflows: no posterior there.
    return Number.isNaN(sum) ? -Infinity : sum;
  };

  const logDensity = (z: Float64Array, gradient: Float64Array): number => {
    readParameters(z, layout, priors, parameters);
    readSlopes(z, layout, priors, parameters);
    const p = parameters;
    let sum = 0;
    for (let i = 0; i < layout.size; i += 1) {
      const zi = z[i] ?? NaN;
      sum -= 0.5 * zi * zi;
      gradient[i] = -zi;
    }
    const add = (index: number, amount: number): void => {
      if (index >= 0) gradient[index] = (gradient[index] ?? NaN) + amount;
    };
    sum += addBounds(model, layout, p, add);
    for (const o of observations) {
      const margin = marginOf(o, z, layout, p, priors.airSd);
      sum +=
        o.count *
        logProbabilityAndSlopes(
          o,
          margin,
          p,
          { cdf, pdf: link.pdf, care: o.counted ? ofCount : ofCell },
          slopes,
        );
      addSlopes(o, z, here, o.count, add);
      if (layout.sheet >= 0 && o.sheet >= 0) {
        const dm = o.count * slopes.margin;
        add(layout.sheet + o.sheet, dm * p.sheetSd);
        add(layout.sheetSd, dm * (z[layout.sheet + o.sheet] ?? NaN) * p.sheetSdSlope);
      }
    }
    return sum;
  };

  return { layout, priors, value, logDensity };
};

/** The margin m of one observation: how far below the changeover it was cut, in ln speed. */
const marginOf = (
  o: Observation,
  z: Float64Array,
  layout: Layout,
  p: Parameters,
  airSd: number,
): number => {
  const margin = p.lnV50 + p.powerExponent * o.lnPower - o.lnSpeed;
  const ofSheet =
    layout.sheet >= 0 && o.sheet >= 0 ? p.sheetSd * (z[layout.sheet + o.sheet] ?? NaN) : 0;
  return margin + ofSheet + furtherMargin(o, z, layout, p, airSd);
};
