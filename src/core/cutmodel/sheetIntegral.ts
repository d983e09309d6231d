import { logChanceOf, slopesOfAlike } from './cutAlike.ts';
import type { Target } from './likelihood.ts';
import type { Link } from './links.ts';
import { addBounds, addSlopes, furtherMargin, type AddSlope } from './margins.ts';
import type { Layout, Model } from './model.ts';
import { blankSlopes } from './observed.ts';
import { blankParameters, readParameters, readSlopes, type Parameters } from './parameters.ts';
import { sheetsOf } from './sheetStarts.ts';

/**
 * The target with the effects of sheets integrated out instead of drawn. A great order fixes the level of its own sheet to a
 * part in a thousand and says little of the next one: with an unknown for each, the posterior is a thread that no draw hits.
 * Integrated it is as wide as sheets differ, and of as many dimensions as there are other unknowns, however many sheets.
 *
 *     p(readings of sheet k | all else) = ∫ N(w; 0, ω²) Π p(reading | margin + w) dw
 *
 * by the trapezoid rule about each integrand's own mode, which converges exponentially there. O(observations · nodes).
 */
export interface IntegratedTarget extends Target {
  /** The effect of a sheet, given all else, at this place of its distribution (0–1); 0 for one of which nothing was read. */
  readonly effectAt: (z: Float64Array, sheet: number, place: number) => number;
  /** What was reckoned so far, as posteriors count it. */
  readonly work: () => number;
}

/** A setting in a sheet's integral takes a third of what an observation does by itself; its slopes take as much as one. */
const perChance = 1 / 3;

/**
 * Nodes of a sheet's integral stand its own standard deviation apart, on each side until the integrand has fallen by so much
 * in ln, and by as much more as there are sheets whose errors add up. The middle three are those by which its mode was looked for, so that most integrals take one look and four or
 * five more. Coarser, and a study of thousands of cells would be drowned in the errors of its sheets.
 */
const dropOfOne = 6;
const mostHalf = 8;
const middle = mostHalf;
const nodeCount = 2 * mostHalf + 1;

/** How far the mode of a sheet's integrand is followed. */
const mostLooks = 6;

/** A node that bears less of all integrals together moves no slope. */
const negligibleOfAll = 1e-3;

type Sheet = readonly number[];

const sides = [-1, 1] as const;

export const integratedTarget = (model: Model, layout: Layout, link: Link): IntegratedTarget => {
  const { priors, habit } = model;
  const parameters = blankParameters();
  const slopes = blankSlopes();
  const here = { layout, priors, p: parameters, slopes };
  const bounded = priors.powerExponentMayBeNegative !== true;
  const cdf = priors.misreading > 0 ? link.quickCdf : link.cdf;
  const { settings, sheets, alone, kinds } = sheetsOf(model, link);

  const furthestDrop = dropOfOne + Math.log(Math.max(1, sheets.length / 10));
  const negligible = negligibleOfAll / Math.max(1, sheets.length / 10);

  /** Of the point that is being reckoned: margin of each setting on a mean sheet, and the share that meets a flaw. */
  const base = new Float64Array(settings.length);
  const flaw = new Float64Array(settings.length);
  const at = new Float64Array(nodeCount);
  const weight = new Float64Array(nodeCount);

  const logChance = logChanceOf(settings, cdf);
  const chances = { p: parameters, margin: base, flaw };
  let work = 0;

  /** Of sheets alike only one is reckoned. */
  const reckoned = [...alone, ...kinds.flatMap(({ sheet }) => sheet)];

  const prepare = (some: readonly number[], z: Float64Array, p: Parameters): void => {
    let lengthM = -1;
    let met = 0;
    for (const i of some) {
      const cut = settings[i]?.cut;
      if (cut === undefined) continue;
      if (cut.lengthM !== lengthM) {
        lengthM = cut.lengthM;
        met = 1 - Math.exp(-p.flawsPerMetre * lengthM);
      }
      flaw[i] = met;
      base[i] =
        p.lnV50 +
        p.powerExponent * cut.lnPower -
        cut.lnSpeed +
        furtherMargin(cut, z, layout, p, priors.airSd);
    }
  };

  /** ln of a sheet's integrand, without the normal's constant. */
  const logAt = (sheet: Sheet, w: number, p: Parameters): number => {
    work += perChance * sheet.length;
    return -0.5 * (w / p.sheetSd) ** 2 + logChance(sheet, w, chances);
  };

  /** Writes a sheet's nodes and their shares of its integral; gives ln of the integral. */
  const integrate = (sheet: Sheet, p: Parameters): number => {
    const { sigma, sheetSd } = p;
    let pull = 0;
    let precision = 1 / (sheetSd * sheetSd);
    for (const i of sheet) {
      const setting = settings[i];
      if (setting === undefined) continue;
      const sharp = setting.information / (sigma * sigma);
      pull += sharp * (sigma * setting.level - (base[i] ?? NaN));
      precision += sharp;
    }
    let centre = pull / precision;
    let width = 1 / Math.sqrt(precision);
    for (let look = 0; ; look += 1) {
      const on = logAt(sheet, centre, p);
      const before = logAt(sheet, centre - width, p);
      const after = logAt(sheet, centre + width, p);
      weight[middle - 1] = before;
      weight[middle] = on;
      weight[middle + 1] = after;
      const bend = 2 * on - before - after;
      const rise = 0.5 * (after - before);
      const step = bend > 0.05 ? rise / bend : rise > 0 ? 2 : -2;
      const times = bend > 0.05 ? 1 / Math.sqrt(bend) : 2;
      const isNear = Math.abs(step) < 0.8 && times > 0.75 && times < 1.5;
      if (isNear || look === mostLooks) break;
      centre += Math.min(3, Math.max(-3, step)) * width;
      width = Math.min(1.3 * sheetSd, Math.min(3, Math.max(0.33, times)) * width);
    }
    let most = Math.max(
      weight[middle],
      weight[middle - 1] ?? -Infinity,
      weight[middle + 1] ?? -Infinity,
    );
    for (let q = 0; q < nodeCount; q += 1) {
      at[q] = centre + (q - middle) * width;
      if (Math.abs(q - middle) > 1) weight[q] = -Infinity;
    }
    for (const side of sides) {
      for (let k = 2; k <= mostHalf; k += 1) {
        if (!((weight[middle + side * (k - 1)] ?? NaN) > most - furthestDrop)) break;
        const log = logAt(sheet, centre + side * k * width, p);
        weight[middle + side * k] = log;
        if (log > most) most = log;
      }
    }
    let sum = 0;
    for (let q = 0; q < nodeCount; q += 1) {
      const share = Math.exp((weight[q] ?? NaN) - most);
      weight[q] = share;
      sum += share;
    }
    for (let q = 0; q < nodeCount; q += 1) weight[q] = (weight[q] ?? NaN) / sum;
    return most + Math.log((sum * width) / (sheetSd * Math.sqrt(2 * Math.PI)));
  };

  const value = (z: Float64Array): number => {
    const p = parameters;
    readParameters(z, layout, priors, p);
    if (bounded && p.powerExponent <= 0) return -Infinity;
    let sum = 0;
    for (let i = 0; i < layout.size; i += 1) sum -= 0.5 * (z[i] ?? NaN) ** 2;
    if (habit) {
      const off = p.lnV50 + p.powerExponent * habit.lnPower - habit.mean;
      sum -= 0.5 * (off / habit.sd) ** 2;
    }
    prepare(reckoned, z, p);
    sum += logChance(alone, 0, chances);
    for (const { sheet, times } of kinds) sum += times * integrate(sheet, p);
    return Number.isNaN(sum) ? -Infinity : sum;
  };

  const logDensity = (z: Float64Array, gradient: Float64Array): number => {
    const p = parameters;
    readParameters(z, layout, priors, p);
    readSlopes(z, layout, priors, p);
    let sum = 0;
    for (let i = 0; i < layout.size; i += 1) {
      const zi = z[i] ?? NaN;
      sum -= 0.5 * zi * zi;
      gradient[i] = -zi;
    }
    const add: AddSlope = (index, amount) => {
      if (index >= 0) gradient[index] = (gradient[index] ?? NaN) + amount;
    };
    sum += addBounds(model, layout, p, add);
    prepare(reckoned, z, p);
    const addOf = (i: number, shift: number, share: number): void => {
      const setting = settings[i];
      if (setting === undefined) return;
      work += 1;
      const margin = (base[i] ?? NaN) + shift;
      slopesOfAlike(setting, margin, p, { flaw: flaw[i] ?? NaN, cdf, pdf: link.pdf }, slopes);
      addSlopes(setting.cut, z, here, share, add);
    };
    sum += logChance(alone, 0, chances);
    for (const i of alone) addOf(i, 0, 1);
    for (const { sheet, times } of kinds) {
      sum += times * integrate(sheet, p);
      for (let q = 0; q < nodeCount; q += 1) {
        const share = weight[q] ?? NaN;
        if (share < negligible) continue;
        const all = times * share;
        const w = at[q] ?? NaN;
        for (const i of sheet) addOf(i, w, all);
        add(layout.sheetSd, ((all * ((w / p.sheetSd) ** 2 - 1)) / p.sheetSd) * p.sheetSdSlope);
      }
    }
    return sum;
  };

  const effectAt: IntegratedTarget['effectAt'] = (z, index, place) => {
    const sheet = sheets[index];
    if (sheet === undefined || sheet.length === 0) return 0;
    const p = parameters;
    readParameters(z, layout, priors, p);
    prepare(sheet, z, p);
    integrate(sheet, p);
    return placed(place, at, weight);
  };

  return { layout, priors, value, logDensity, effectAt, work: () => work };
};

/** The place of a sheet's distribution, read off its nodes; between two of them straight. */
const placed = (place: number, at: Float64Array, weight: Float64Array): number => {
  let below = 0;
  for (let q = 0; q < weight.length; q += 1) {
    const share = weight[q] ?? NaN;
    if (below + share >= place || q === weight.length - 1) {
      const step = (at[1] ?? NaN) - (at[0] ?? NaN);
      return (at[q] ?? NaN) + step * ((place - below) / Math.max(share, 1e-12) - 0.5);
    }
    below += share;
  }
  return 0;
};
