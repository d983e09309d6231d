import { normalAtSummit, sampleAdaptively, type Sample } from '../../num/adaptiveSampling.ts';
import { kronecker } from '../../num/kronecker.ts';
import { positiveFactor, type Summit } from '../../num/newton.ts';
import { systematicResample } from '../../num/systematicResample.ts';
import { leastCurvature } from './conditionalShape.ts';
import { links as allLinks, type Link } from './links.ts';
import { layOut, type Layout, type Model } from './model.ts';
import { decoded, linksWith, type LinkWeights, type Posterior } from './posterior.ts';
import { summitsOf } from './proposal.ts';
import { integratedTarget, type IntegratedTarget } from './sheetIntegral.ts';

/**
 * How many points a link's posterior is drawn with, a round; and how long it goes on. Of thousands of settings each point
 * takes milliseconds, and the posterior is all but normal.
 */
const effort = { points: 400, mostRounds: 24, enough: 700 } as const;
const effortOfThousands = { points: 150, mostRounds: 12, enough: 160 } as const;
const thousands = 800;

/** Of thousands of observations about so many are shown to those that look for a start. */
const toStartFrom = 300;

/** A link whose evidence at its summit is so much (ln) below the best bears nothing that shows. */
const idleBelow = 9;

/** An answer by fewer effective points says so. */
const leastEffective = 150;

/**
 * Effects of sheets are drawn for the last so many, cards being the last of all; what was cut from one before them is taken
 * to be of a mean sheet where it is asked about by itself. Times points: 4 MB.
 */
const mostSheetsDrawn = 300;
const mostKept = 5e5;

/** Points that weigh less than this move nothing. */
const negligibleWeight = 1e-7;

/** A summit lower than the highest by more than this (ln) is none. */
const lowerBy = 12;

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
 * drawn for the points that are kept. Each link is sampled by itself, since a long part's tail is where links differ, for as
 * long as it takes. O(points · observations).
 */
export const posteriorOfMany = (model: Model, linkWeights: LinkWeights): Posterior => {
  const layout = layOut({ ...model, sheets: 0 });
  const { size } = layout;
  const known = linksWith(linkWeights).map(({ link, share }) => {
    const goal = integratedTarget(model, layout, link);
    const summits = climbed(model, layout, link, goal);
    const highest = Math.max(...summits.map(({ value }) => value));
    const starts = summits.filter(({ value }) => value >= highest - lowerBy);
    const evidence = Math.log(share) + Math.max(...starts.map(evidenceAt));
    return { link, share, goal, starts, evidence };
  });
  const best = Math.max(...known.map(({ evidence }) => evidence));
  const ofThousands = model.observations.length > thousands;
  const each = known
    .filter(({ evidence }) => evidence >= best - idleBelow)
    .map(({ link, share, goal, starts }): OfLink => {
      const sample = sampleAdaptively({
        size,
        logDensity: goal.value,
        starts: starts.map(({ point, curvature }) =>
          normalAtSummit(point, positiveFactor(Float64Array.from(curvature), size, leastCurvature)),
        ),
        bendsAlong: layout.lnSigma,
        ...(ofThousands ? effortOfThousands : effort),
      });
      const factor = Math.log(share / sample.count) - 0.5 * size * Math.log(2 * Math.PI);
      return { link, index: allLinks.indexOf(link), goal, sample, factor };
    });
  const { z, link, weight, logEvidence, effective } = gathered(each, size, model.sheets);
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
    converged: Number.isFinite(logEvidence) && effective >= leastEffective,
    sheet: drawnSheets(model, { z, size, link }, each),
  };
};

/** Summits of a link's posterior; of thousands of observations they are looked for on some, and then climbed on all. */
const climbed = (
  model: Model,
  layout: Layout,
  link: Link,
  goal: IntegratedTarget,
): readonly Summit[] => {
  const { observations } = model;
  if (observations.length <= thousands) return summitsOf(goal);
  const every = Math.ceil(observations.length / toStartFrom);
  // Whole sheets where there are enough of them.
  const some: Model = {
    ...model,
    observations: observations.filter(({ sheet }, i) =>
      model.sheets > 4 * every ? sheet % every === 0 : i % every === 0,
    ),
  };
  const highest = summitsOf(integratedTarget(some, layout, link)).reduce((a, b) =>
    b.value > a.value ? b : a,
  );
  return summitsOf(goal, [highest.point]);
};

/** ln of the evidence by Laplace's approximation. */
const evidenceAt = ({ value, factor, point }: Summit): number => {
  let log = value;
  for (let d = 0; d < point.length; d += 1) log -= Math.log(factor[d * point.length + d] ?? 1);
  return log;
};

/** The links' points together, with weights that sum to 1; fewer of equal weight where there are many sheets to each. */
const gathered = (each: readonly OfLink[], size: number, sheets: number) => {
  const all = each.flatMap(({ index, sample, factor }) =>
    Array.from({ length: sample.count }, (_, i) => ({
      index,
      z: sample.z.subarray(i * size, (i + 1) * size),
      log: (sample.logWeight[i] ?? -Infinity) + factor,
    })),
  );
  const most = all.reduce((highest, { log }) => Math.max(highest, log), -Infinity);
  const raw = Float64Array.from(all, ({ log }) => Math.exp(log - most));
  const sum = raw.reduce((total, share) => total + share, 0);
  const squares = raw.reduce((total, share) => total + share * share, 0);
  const few = Math.floor(mostKept / Math.max(1, Math.min(mostSheetsDrawn, sheets)));
  const bearing = [...all.keys()].filter((i) => (raw[i] ?? 0) > negligibleWeight * sum);
  const isMany = bearing.length > few;
  const chosen = isMany
    ? systematicResample(
        raw.map((share) => share / sum),
        Float64Array.from(all, (point) => point.z[0] ?? 0),
        few,
      )
    : Uint32Array.from(bearing);
  const kept = bearing.reduce((total, i) => total + (raw[i] ?? 0), 0);
  const z = new Float64Array(chosen.length * size);
  chosen.forEach((from, to) => z.set(all[from]?.z ?? [], to * size));
  return {
    z,
    link: Uint8Array.from(chosen, (i) => all[i]?.index ?? 0),
    weight: Float64Array.from(chosen, (i) => (isMany ? 1 / few : (raw[i] ?? 0) / kept)),
    logEvidence: most + Math.log(sum),
    effective: (sum * sum) / squares,
  };
};

/** The effect of each sheet at each point, drawn from what the readings leave of it there. */
const drawnSheets = (
  { sheets }: Model,
  points: { readonly z: Float64Array; readonly size: number; readonly link: Uint8Array },
  each: readonly OfLink[],
): readonly Float64Array[] => {
  const count = points.link.length;
  const columns = Array.from({ length: sheets }, () => new Float64Array(count));
  const goals = new Map(each.map(({ index, goal }) => [index, goal]));
  const places = kronecker(2);
  const effects = new Float64Array(sheets);
  for (let i = 0; i < count; i += 1) {
    const z = points.z.subarray(i * points.size, (i + 1) * points.size);
    goals
      .get(points.link[i] ?? 0)
      ?.drawSheets(z, (k) => (places.at(i, 0) + places.at(k, 1)) % 1, effects, mostSheetsDrawn);
    columns.forEach((column, k) => (column[i] = effects[k] ?? 0));
  }
  return columns;
};
