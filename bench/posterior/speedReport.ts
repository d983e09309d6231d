import { compileStudy } from '../../src/core/cutmodel/compileStudy.ts';
import { decisionOn } from '../../src/core/cutmodel/decisionOn.ts';
import { fit } from '../../src/core/cutmodel/fit.ts';
import { target } from '../../src/core/cutmodel/likelihood.ts';
import { links } from '../../src/core/cutmodel/links.ts';
import { parameterLayout } from '../../src/core/cutmodel/model.ts';
import { blankParameters, readParameters } from '../../src/core/cutmodel/parameters.ts';
import { meanSdOf, posteriorOf, type Posterior } from '../../src/core/cutmodel/posterior.ts';
import { priors } from '../../src/core/cutmodel/priors.ts';
import { marginKeeping } from '../../src/core/cutmodel/marginalShare.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { weightedQuantile } from '../../src/num/weightedQuantile.ts';
import { drawStudy } from '../calibration/drawStudy.ts';
import { effectiveDraws, randomWalk } from './randomWalk.ts';

const referenceLines = 20_000;
const warmUp = 5000;
const keep = 30_000;

/** What both are held to: the mean of ln v50, and the 5 % quantile of ln of the fastest speed that keeps the share. */
interface Measures {
  readonly mean: number;
  readonly quantile: number;
}

const measuresOf = (
  posterior: Pick<Posterior, 'lnV50' | 'weight'>,
  fastest: Float64Array,
): Measures => ({
  mean: posterior.lnV50.reduce((sum, value, i) => sum + value * (posterior.weight[i] ?? 0), 0),
  quantile: weightedQuantile(fastest, posterior.weight, 0.05),
});

const timed = <T>(act: () => T): readonly [T, number] => {
  const start = process.cpuUsage();
  const value = act();
  return [value, process.cpuUsage(start).user / 1000];
};

/** One study: how wrong ours is, and what the walk takes to be as right. */
const compareOn = (seed: number) => {
  const { study } = drawStudy(seededRandom(seed), false);
  const compiled = compileStudy(study);
  const { model } = compiled;
  fit(study);
  const [quick, ourMs] = timed(() => {
    const { posterior, decision } = fit(study);
    return measuresOf(posterior, decision.lnFastestAtP0);
  });
  const reference = posteriorOf(model, priors.links, referenceLines);
  const fastest = decisionOn(compiled, reference, study.promise).lnFastestAtP0;
  const exact = {
    ...measuresOf(reference, fastest),
    sd: meanSdOf(reference, (i) => reference.lnV50[i] ?? 0).sd,
    sdOfFastest: meanSdOf(reference, (i) => fastest[i] ?? 0).sd,
    // Density at the 5 % quantile by the difference of quantiles, for the error of one draw's quantile.
    slope:
      (weightedQuantile(fastest, reference.weight, 0.07) -
        weightedQuantile(fastest, reference.weight, 0.03)) /
      0.04,
  };

  const layout = parameterLayout(model);
  const targets = links.map((link) => target(model, layout, link));
  const lnWeights = links.map((link) => Math.log(priors.links[link.name]));
  const [walk, walkMs] = timed(() =>
    randomWalk(
      (z, side) => (targets[side]?.value(z) ?? -Infinity) + (lnWeights[side] ?? 0),
      layout.size,
      seededRandom(seed + 1),
      { warmUp, keep, sides: links.length },
    ),
  );
  const margins = links.map((link) => marginKeeping(link, 0.97, 1));
  const p = blankParameters();
  const lnV50 = new Float64Array(keep);
  const below = new Float64Array(keep);
  walk.steps.forEach((z, i) => {
    readParameters(z, layout, model.priors, p);
    lnV50[i] = p.lnV50;
    const margin = margins[walk.sides[i] ?? 0]?.(p.sheetSd / p.sigma) ?? 0;
    below[i] = p.lnV50 - p.sigma * margin < exact.quantile ? 1 : 0;
  });
  const walkMean = lnV50.reduce((a, b) => a + b, 0) / keep;
  const walkEffective = effectiveDraws(lnV50);
  return {
    ourMs,
    // Squared errors in units of one independent draw's variance: their means are 1/(equivalent draws).
    meanError: ((quick.mean - exact.mean) / exact.sd) ** 2,
    quantileError: ((quick.quantile - exact.quantile) / exact.slope) ** 2 / (0.05 * 0.95),
    /** In sds of the posterior. */
    meanOff: Math.abs(quick.mean - exact.mean) / exact.sd,
    quantileOff: Math.abs(quick.quantile - exact.quantile) / exact.sdOfFastest,
    msPerStep: walkMs / (warmUp + keep),
    drawsPerStepMean: walkEffective / keep,
    drawsPerStepQuantile: effectiveDraws(below) / keep,
    // How far the two stand apart, in the walk's own standard errors.
    apart: (walkMean - exact.mean) / (exact.sd / Math.sqrt(walkEffective)),
  };
};

/** Median, 95th percentile and worst. */
const spreadOf = (values: readonly number[]): string => {
  const sorted = values.toSorted((a, b) => a - b);
  return [0.5, 0.95, 1]
    .map((p) => sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))] ?? Number.NaN)
    .map((value) => value.toFixed(3))
    .join(', ');
};

const average = (values: readonly number[]): number =>
  values.reduce((a, b) => a + b, 0) / values.length;

/**
 * How much longer a random walk takes to be as right as the posterior of an answer, in the same run: processor time of both,
 * the walk's warm-up left out in its favour.
 */
export const speedReport = function* (studies: number): Iterable<string> {
  const found = Array.from({ length: studies }, (_, i) => compareOn(2 * i + 101));
  const ourMs = average(found.map((one) => one.ourMs));
  const line = (what: string, error: number, drawsPerStep: number): string => {
    const draws = 1 / error;
    const walkMs = (draws / drawsPerStep) * average(found.map((one) => one.msPerStep));
    return `posterior against a random walk, ${what}: ours ${ourMs.toFixed(0)} ms, worth ${draws.toFixed(0)} independent draws; the walk ${walkMs.toFixed(0)} ms for as many: ${(walkMs / ourMs).toFixed(0)} times   (target 50)`;
  };
  yield line(
    'mean of ln v50',
    average(found.map((one) => one.meanError)),
    average(found.map((one) => one.drawsPerStepMean)),
  );
  yield line(
    '5 % quantile of the answer',
    average(found.map((one) => one.quantileError)),
    average(found.map((one) => one.drawsPerStepQuantile)),
  );
  yield `error in the posterior's sd, median, 95th of 100 and worst: mean of ln v50 ${spreadOf(found.map((one) => one.meanOff))}; 5 % quantile of the answer ${spreadOf(found.map((one) => one.quantileOff))}`;
  const apart = found.map((one) => Math.abs(one.apart));
  yield `the two means of ln v50 stand at most ${Math.max(...apart).toFixed(1)} of the walk's standard errors apart, over ${String(studies)} studies`;
};
