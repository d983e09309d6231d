import {
  normalAtMode,
  sampleAdaptively,
  type NormalShape,
  type Sample,
} from '../../num/adaptiveSampling.ts';
import { kronecker } from '../../num/kronecker.ts';
import { positiveFactor, type LogDensity, type Mode } from '../../num/newtonMode.ts';
import { straightAlong } from '../../num/straightAlong.ts';
import { thinWeights } from '../../num/thinWeights.ts';
import { leastCurvature } from './conditionalShape.ts';
import { links as allLinks, type Link } from './links.ts';
import { parameterLayout, type Layout, type Model } from './model.ts';
import { decoded, linksWith, onceASheet, type LinkWeights, type Posterior } from './posterior.ts';
import { modesFrom, modesOf } from './proposal.ts';
import { integratedTarget, type IntegratedTarget } from './sheetIntegral.ts';
import { settledBatches } from './settledBatches.ts';

/** How many points a link's posterior is drawn with, a round, and how long it goes on. */
export interface Effort {
  readonly points: number;
  readonly mostRounds: number;
  readonly enough: number;
  readonly least: number;
}
/**
 * To so many effective points for a link that bears all, by the root of its share for one that bears less. Of thousands of
 * settings each point takes milliseconds, and the posterior is all but normal: some 300 in all, by which its 5 % quantile is
 * good to about 0.12 of its sd.
 */
const usualEffort: Effort = { points: 400, mostRounds: 24, enough: 500, least: 120 };
export const effortOfThousands: Effort = { points: 150, mostRounds: 12, enough: 160, least: 90 };
/** For the evidence alone, to a tenth. */
export const effortOfEvidence: Effort = { points: 200, mostRounds: 12, enough: 120, least: 60 };
const thousands = 800;

/** Of thousands of observations about so many are shown to those that look for a start. */
const toStartFrom = 300;

/** A link whose evidence at its mode is so much (ln) below the best bears nothing that shows. */
const idleBelow = 9;

/** An answer by fewer effective points says so. */
const leastEffective = 150;

/** Points that are kept: about as many as are effective. */
const mostKept = 1500;

/** A mode lower than the highest by more than this (ln) is none. */
const lowerBy = 12;

interface KnownLink {
  readonly link: Link;
  readonly share: number;
  readonly goal: IntegratedTarget;
  readonly logDensity: LogDensity;
  /** Its modes, in settled coordinates. */
  readonly starts: readonly Mode[];
  /** ln of its share of the posterior, by its modes. */
  readonly evidence: number;
}

interface OfLink {
  readonly link: Link;
  readonly index: number;
  readonly goal: IntegratedTarget;
  readonly sample: Sample;
  /** ln of what a point's weight is worth beside the other links'. */
  readonly factor: number;
}

/**
 * The posterior of a model with many sheets, or with orders whose counts are great: effects of sheets are integrated, and
 * drawn where one of them is asked about. Each link is sampled by itself, since a long part's tail is where links differ, for as
 * long as it takes. O(points · observations).
 */
export const posteriorOfMany = (
  model: Model,
  linkWeights: LinkWeights,
  { points, mostRounds, enough, least } = model.observations.length > thousands
    ? effortOfThousands
    : usualEffort,
): Posterior => {
  const layout = parameterLayout({ ...model, sheets: 0 });
  const { size } = layout;
  const { known, settled } = knownLinks(model, layout, linkWeights);
  const best = known.reduce((a, b) => (b.evidence > a.evidence ? b : a));
  const bearing = known.filter(({ evidence }) => evidence >= best.evidence - idleBelow);
  const whole = bearing.reduce((sum, one) => sum + Math.exp(one.evidence - best.evidence), 0);
  // The links' ridges run alike.
  const straight = straightAlong(best.logDensity, highestOf(best.starts), {
    axis: layout.lnSigma,
    spacing: ridgeSpacing,
    leastCurvature,
  });
  const each = bearing.map(({ link, share, goal, starts, evidence }): OfLink => {
    const y = new Float64Array(size);
    const z = new Float64Array(size);
    const toZ = (x: Float64Array): number => {
      const ln = straight.toBent(x, y);
      return ln + settled.toZ(y, z);
    };
    const sample = sampleAdaptively({
      size,
      logDensity: (x) => toZ(x) + goal.value(z),
      starts: starts.map(({ point, curvature }) =>
        straight.normalAbout(
          normalAtMode(point, positiveFactor(Float64Array.from(curvature), size, leastCurvature)),
        ),
      ),
      guard: standardNormal(size),
      bendsAlong: layout.lnSigma,
      points,
      mostRounds,
      enough: Math.max(least, enough * Math.sqrt(Math.exp(evidence - best.evidence) / whole)),
    });
    for (let i = 0; i < sample.count; i += 1) {
      const at = sample.z.subarray(i * size, (i + 1) * size);
      toZ(at);
      at.set(z);
    }
    const factor = Math.log(share / sample.count) - 0.5 * size * Math.log(2 * Math.PI);
    return { link, index: allLinks.indexOf(link), goal, sample, factor };
  });
  const { z, link, weight, logEvidence, effective } = gathered(each, size);
  return {
    ...decoded(model, layout, { count: weight.length, z }),
    model,
    layout,
    count: weight.length,
    weight,
    link,
    links: known.map((one) => {
      const index = allLinks.indexOf(one.link);
      let probability = 0;
      weight.forEach((share, i) => (probability += link[i] === index ? share : 0));
      return { link: one.link, probability };
    }),
    logEvidence,
    effectivePoints: effective,
    converged: Number.isFinite(logEvidence) && effective >= Math.min(leastEffective, enough),
    isIntegrated: true,
    work: known.reduce((sum, { goal }) => sum + goal.work(), 0),
    sheetEffect: sheetEffects(model, { z, size, link }, each),
  };
};

/** How far apart the nodes of the ridge along ln σ stand, in prior standard deviations. */
const ridgeSpacing = { least: 0.1, most: 0.8 } as const;

/** The links with their modes, in coordinates in which batches are settled by those of the first. */
const knownLinks = (model: Model, layout: Layout, linkWeights: LinkWeights) => {
  const goals = linksWith(linkWeights).map(({ link, share }) => ({
    link,
    share,
    goal: integratedTarget(model, layout, link),
  }));
  const [first] = goals;
  if (!first) throw new Error('a posterior needs a link');
  // The links' hills stand close to each other: only for the first one are they looked for from afar.
  const seen = climbed(model, layout, first.link, first.goal);
  const settled = settledBatches(first.goal, highestOf(seen));
  let near = seen.map(({ point }) => settled.toY(point));
  const known = goals.map(({ link, share, goal }): KnownLink => {
    const logDensity = settled.climbIn(goal);
    const modes = modesFrom(near, logDensity);
    const highest = highestOf(modes).value;
    const starts = distinctOf(modes.filter(({ value }) => value >= highest - lowerBy));
    near = starts.map(({ point }) => point);
    const evidence = Math.log(share) + Math.max(...starts.map(evidenceAt));
    return { link, share, goal, logDensity, starts, evidence };
  });
  return { known, settled };
};

const highestOf = (modes: readonly Mode[]): Mode =>
  modes.reduce((a, b) => (b.value > a.value ? b : a));

/** Modes of a link's posterior; of thousands of observations they are looked for on some, and then climbed on all. */
const climbed = (
  model: Model,
  layout: Layout,
  link: Link,
  goal: IntegratedTarget,
): readonly Mode[] => {
  const { observations } = model;
  if (observations.length <= thousands) return modesOf(goal);
  const every = Math.ceil(observations.length / toStartFrom);
  // Whole sheets where there are enough of them.
  const some: Model = {
    ...model,
    observations: observations.filter(({ sheet }, i) =>
      model.sheets > 4 * every ? sheet % every === 0 : i % every === 0,
    ),
  };
  const highest = highestOf(modesOf(integratedTarget(some, layout, link)));
  return modesOf(goal, [highest.point]);
};

/** Goes from different places that ended on one hill, once. */
const distinctOf = (modes: readonly Mode[]): readonly Mode[] =>
  modes.filter(
    ({ point }, i) =>
      !modes
        .slice(0, i)
        .some((before) => before.point.every((z, d) => Math.abs(z - (point[d] ?? NaN)) < sameHill)),
  );

/** In prior standard deviations, coordinate by coordinate. */
const sameHill = 0.05;

/** What the parameters are before anything is known: N(0, I) in z. */
const standardNormal = (size: number): NormalShape => {
  const factor = new Float64Array(size * size);
  for (let d = 0; d < size; d += 1) factor[d * size + d] = 1;
  return { mean: new Float64Array(size), factor };
};

/** ln of the evidence by Laplace's approximation. */
const evidenceAt = ({ value, factor, point }: Mode): number => {
  let log = value;
  for (let d = 0; d < point.length; d += 1) log -= Math.log(factor[d * point.length + d] ?? NaN);
  return log;
};

/** The links' points together, with weights that sum to 1, thinned to what bears the answer. */
const gathered = (each: readonly OfLink[], size: number) => {
  const count = each.reduce((sum, { sample }) => sum + sample.count, 0);
  const all = { z: new Float64Array(count * size), link: new Uint8Array(count) };
  const logs = new Float64Array(count);
  let first = 0;
  for (const { index, sample, factor } of each) {
    all.z.set(sample.z, first * size);
    all.link.fill(index, first, first + sample.count);
    logs.set(
      sample.logWeight.map((log) => log + factor),
      first,
    );
    first += sample.count;
  }
  const most = logs.reduce((highest, log) => Math.max(highest, log), -Infinity);
  const raw = logs.map((log) => Math.exp(log - most));
  const sum = raw.reduce((total, share) => total + share, 0);
  const squares = raw.reduce((total, share) => total + share * share, 0);
  const { chosen, weight } = thinWeights(
    raw.map((share) => share / sum),
    Float64Array.from({ length: count }, (_, i) => all.z[i * size + 1] ?? NaN),
    mostKept,
  );
  const z = new Float64Array(chosen.length * size);
  chosen.forEach((from, to) => z.set(all.z.subarray(from * size, (from + 1) * size), to * size));
  const kept = weight.reduce((total, share) => total + share, 0);
  return {
    z,
    link: Uint8Array.from(chosen, (i) => all.link[i] ?? NaN),
    weight: weight.map((share) => share / kept),
    logEvidence: most + Math.log(sum),
    effective: (sum * sum) / squares,
  };
};

/** The effect of a sheet at each point, drawn from what the readings leave of it there. */
const sheetEffects = (
  { sheets }: Model,
  points: { readonly z: Float64Array; readonly size: number; readonly link: Uint8Array },
  each: readonly OfLink[],
): Posterior['sheetEffect'] => {
  const goals = new Map(each.map(({ index, goal }) => [index, goal]));
  const places = kronecker(2);
  return onceASheet((sheet) => {
    if (sheet < 0 || sheet >= sheets) return undefined;
    return Float64Array.from(points.link, (link, i) => {
      const z = points.z.subarray(i * points.size, (i + 1) * points.size);
      const place = (places.at(i, 0) + places.at(sheet, 1)) % 1;
      return goals.get(link)?.effectAt(z, sheet, place) ?? 0;
    });
  });
};
