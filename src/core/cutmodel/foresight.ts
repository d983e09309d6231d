import { kronecker } from '../../num/kronecker.ts';
import { normalQuantile } from '../../num/normal.ts';
import { risingOrder, systematicResample } from '../../num/systematicResample.ts';
import type { CompiledStudy } from './compileStudy.ts';
import { decisionOn } from './decisionOn.ts';
import type { Fit } from './fit.ts';
import { knownPower } from './knownPower.ts';
import { links } from './links.ts';
import { presentLnV50 } from './presentLevel.ts';

/** A setting that a card may try, with how many cells. */
export interface TrialRung {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly cells: number;
}

/**
 * What a card not cut yet would do to the recommended speed: it is cut many times in thought, on workshops drawn from
 * the posterior, and the answer is recomputed each time by reweighing the posterior's points.
 * Lindley (1956), Ann. Math. Stat. 27:986; Raiffa & Schlaifer (1961), preposterior analysis.
 */
export interface Foresight {
  /** Mean of ln of the fastest speed that holds, after the card, over the powers of interest. */
  readonly lnFastestAfter: (card: readonly TrialRung[], trials: number) => number;
  readonly lnFastestNow: number;
}

const pointCount = 800;

interface Point {
  readonly lnV50: number;
  readonly powerExponent: number;
  readonly sigma: number;
  readonly hangBand: number;
  readonly clear: number;
  readonly link: number;
}

export const foresightOf = (fitted: Fit, powersOfInterestPct: readonly number[]): Foresight => {
  const { study, compiled, posterior } = fitted;
  // A card is a new sheet of the present batch, whatever the promise is of.
  const batchLevel = decisionOn(compiled, posterior, { ...study.promise, for: 'batch' });
  const chosen = systematicResample(posterior.weight, batchLevel.lnFastestAtP0, pointCount);
  const cube = kronecker(2);
  const present = presentLnV50(compiled, posterior);
  const misreading = compiled.model.priors.misreading;
  const points = Array.from(chosen, (i, k): Point => {
    const sheet = (posterior.sheetSd[i] ?? NaN) * normalQuantile(cube.at(k, 0));
    return {
      lnV50: (present[i] ?? NaN) + sheet,
      powerExponent: posterior.powerExponent[i] ?? NaN,
      sigma: posterior.sigma[i] ?? NaN,
      hangBand: posterior.hangBand[i] ?? NaN,
      clear: Math.exp(-(posterior.flawsPerMetre[i] ?? NaN) * 0.06),
      link: posterior.link[i] ?? NaN,
    };
  });
  const lnPowers = powersOfInterestPct.map((powerPct) => knownPower(compiled, powerPct).lnPower);
  const columns = lnPowers.map((lnPower) =>
    Float64Array.from(
      chosen,
      (i) =>
        (fitted.decision.lnFastestAtP0[i] ?? NaN) + (posterior.powerExponent[i] ?? NaN) * lnPower,
    ),
  );
  const rises = columns.map((column) => risingOrder(column));
  const tail = 1 - study.promise.surePct / 100;
  const even = new Float64Array(points.length).fill(1 / points.length);
  const mean = (weights: Float64Array): number => {
    let sum = 0;
    columns.forEach((column, k) => {
      sum += quantileInOrder(column, rises[k] ?? new Uint32Array(0), weights, tail);
    });
    return sum / columns.length;
  };
  const log = new Float64Array(points.length);

  const lnFastestAfter = (card: readonly TrialRung[], trials: number): number => {
    const tables = card.map((rung) => gradeTable(points, rung, compiled, misreading));
    let sum = 0;
    for (let trial = 0; trial < trials; trial += 1) {
      // Truths evenly over the sorted answers, so that few trials represent them all.
      const truth = Math.floor(((trial + 0.5) * points.length) / trials);
      log.fill(0);
      let dice = 0;
      card.forEach((rung, r) => {
        const table = tables[r];
        if (!table) return;
        let [out, hangs, stays] = [0, 0, 0];
        for (let cell = 0; cell < rung.cells; cell += 1, dice += 1) {
          const u = cube.at(trial * 64 + dice, 1);
          if (u < (table.out[truth] ?? NaN)) out += 1;
          else if (u < (table.out[truth] ?? NaN) + (table.hangs[truth] ?? NaN)) hangs += 1;
          else stays += 1;
        }
        for (let i = 0; i < points.length; i += 1) {
          log[i] =
            (log[i] ?? NaN) +
            out * (table.logOut[i] ?? NaN) +
            hangs * (table.logHangs[i] ?? NaN) +
            stays * (table.logStays[i] ?? NaN);
        }
      });
      let most = -Infinity;
      for (const value of log) if (value > most) most = value;
      let total = 0;
      for (let i = 0; i < log.length; i += 1) {
        const weight = Math.exp((log[i] ?? NaN) - most);
        log[i] = weight;
        total += weight;
      }
      for (let i = 0; i < log.length; i += 1) log[i] = (log[i] ?? NaN) / total;
      sum += mean(log);
    }
    return sum / trials;
  };

  return { lnFastestAfter, lnFastestNow: mean(even) };
};

const quantileInOrder = (
  values: Float64Array,
  order: Uint32Array,
  weights: Float64Array,
  p: number,
): number => {
  let below = 0;
  for (const i of order) {
    below += weights[i] ?? NaN;
    if (below >= p) return values[i] ?? NaN;
  }
  return values[order.at(-1) ?? NaN] ?? NaN;
};

const gradeTable = (
  points: readonly Point[],
  rung: TrialRung,
  compiled: CompiledStudy,
  misreading: number,
) => {
  const { lnPower } = knownPower(compiled, rung.powerPct);
  const lnSpeed = Math.log(rung.speedMmPerS);
  const column = (): Float64Array => new Float64Array(points.length);
  const [out, hangs, logOut, logHangs, logStays] = [
    column(),
    column(),
    column(),
    column(),
    column(),
  ];
  const read = (probability: number): number =>
    0.5 * misreading + (1 - 1.5 * misreading) * Math.max(0, probability);
  points.forEach((point, i) => {
    const cdf = links[point.link]?.quickCdf;
    if (!cdf) return;
    const margin = point.lnV50 + point.powerExponent * lnPower - lnSpeed;
    const fell = cdf(margin / point.sigma);
    const through = cdf((margin + point.hangBand) / point.sigma);
    const flawed = 1 - point.clear;
    const pOut = read(point.clear * fell);
    const pHangs = read(point.clear * (through - fell) + flawed / 2);
    const pStays = read(point.clear * (1 - through) + flawed / 2);
    out[i] = pOut;
    hangs[i] = pHangs;
    logOut[i] = Math.log(pOut);
    logHangs[i] = Math.log(pHangs);
    logStays[i] = Math.log(pStays);
  });
  return { out, hangs, logOut, logHangs, logStays };
};
