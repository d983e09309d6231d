import { kronecker } from '../../num/kronecker.ts';
import { systematicResample } from '../../num/systematicResample.ts';
import { target } from './likelihood.ts';
import { links as allLinks, type Link } from './links.ts';
import { layOut, type Layout, type Model, type Observation } from './model.ts';
import { blankParameters, readParameters } from './parameters.ts';
import { proposalFor } from './proposal.ts';

/**
 * The posterior as weighted points: every later question is a weighted sum or quantile over them.
 * All arrays have one entry a point; `weight` sums to 1.
 */
export interface Posterior {
  readonly model: Model;
  readonly layout: Layout;
  readonly count: number;
  readonly weight: Float64Array;
  /** Index into the links. */
  readonly link: Uint8Array;
  readonly lnV50: Float64Array;
  readonly powerExponent: Float64Array;
  readonly sigma: Float64Array;
  readonly hangBand: Float64Array;
  readonly flawsPerMetre: Float64Array;
  readonly sheetSd: Float64Array;
  readonly batchSd: Float64Array;
  readonly thicknessExponent: Float64Array;
  readonly passesExponent: Float64Array;
  readonly cornersExponent: Float64Array;
  /** Effects in ln speed by air level, batch and sheet: `[level][point]`. */
  readonly air: readonly Float64Array[];
  readonly batch: readonly Float64Array[];
  readonly sheet: readonly Float64Array[];
  readonly links: readonly { readonly link: Link; readonly probability: number }[];
  /** ln of the evidence, links averaged by their prior weights. */
  readonly logEvidence: number;
  readonly effectivePoints: number;
  readonly converged: boolean;
}

/** Below this share of effective points an answer is refused. */
const leastEffectiveShare = 0.05;
const leastEffectivePoints = 150;

/**
 * Posterior by importance sampling on a fixed quasi-random sequence, from {@link proposalFor}, one link at a time;
 * the links are then weighed by their evidence. Deterministic: equal input gives equal bytes on one engine.
 * Cost: O(points · cells), ~15 ms for 24 cells.
 */
export const posteriorOf = (
  model: Model,
  linkWeights: Readonly<Partial<Record<Link['name'], number>>>,
  pointsPerLink = 1000,
): Posterior => {
  const layout = layOut(model);
  const used = allLinks.filter((link) => (linkWeights[link.name] ?? 0) > 0);
  const count = used.length * pointsPerLink;
  const logWeights = new Float64Array(count);
  const draws = new Float64Array(count * layout.size);
  const linkOf = new Uint8Array(count);
  const cube = kronecker(layout.size + 1);
  const normaliser = -0.5 * layout.size * Math.log(2 * Math.PI);
  const point = new Float64Array(layout.size);
  used.forEach((link, which) => {
    const goal = target(model, layout, link);
    const proposal = proposalFor(goal);
    const logPrior = Math.log(linkWeights[link.name] ?? 0) - Math.log(pointsPerLink);
    for (let i = 0; i < pointsPerLink; i += 1) {
      const logDensity = proposal.draw((dimension) => cube.at(i, dimension), point);
      const place = which * pointsPerLink + i;
      logWeights[place] = goal.value(point) + normaliser - logDensity + logPrior;
      draws.set(point, place * layout.size);
      linkOf[place] = allLinks.indexOf(link);
    }
  });
  let most = -Infinity;
  for (const value of logWeights) if (value > most) most = value;
  const weight = Float64Array.from(logWeights, (value) => Math.exp(value - most));
  let sum = 0;
  let squares = 0;
  for (const w of weight) {
    sum += w;
    squares += w * w;
  }
  for (let i = 0; i < count; i += 1) weight[i] = (weight[i] ?? 0) / sum;
  const effectivePoints = (sum * sum) / squares;
  return {
    ...decoded(model, layout, draws, count),
    model,
    layout,
    count,
    weight,
    link: linkOf,
    links: used.map((link) => {
      let probability = 0;
      for (let i = 0; i < count; i += 1) {
        if (allLinks[linkOf[i] ?? 0] === link) probability += weight[i] ?? 0;
      }
      return { link, probability };
    }),
    logEvidence: most + Math.log(sum),
    effectivePoints,
    converged:
      Number.isFinite(most) &&
      effectivePoints >= Math.min(leastEffectivePoints, leastEffectiveShare * count),
  };
};

const decoded = (model: Model, layout: Layout, draws: Float64Array, count: number) => {
  const columns = {
    lnV50: new Float64Array(count),
    powerExponent: new Float64Array(count),
    sigma: new Float64Array(count),
    hangBand: new Float64Array(count),
    flawsPerMetre: new Float64Array(count),
    sheetSd: new Float64Array(count),
    batchSd: new Float64Array(count),
    thicknessExponent: new Float64Array(count),
    passesExponent: new Float64Array(count),
    cornersExponent: new Float64Array(count),
  };
  const effects = (levels: number, first: number): Float64Array[] =>
    first < 0 ? [] : Array.from({ length: levels }, () => new Float64Array(count));
  const air = effects(model.airLevels, layout.air);
  const batch = effects(model.batches, layout.batch);
  const sheet = effects(model.sheets, layout.sheet);
  const p = blankParameters();
  for (let i = 0; i < count; i += 1) {
    const z = draws.subarray(i * layout.size, (i + 1) * layout.size);
    readParameters(z, layout, model.priors, p);
    columns.lnV50[i] = p.lnV50;
    columns.powerExponent[i] = p.powerExponent;
    columns.sigma[i] = p.sigma;
    columns.hangBand[i] = p.hangBand;
    columns.flawsPerMetre[i] = p.flawsPerMetre;
    columns.sheetSd[i] = p.sheetSd;
    columns.batchSd[i] = p.batchSd;
    columns.thicknessExponent[i] = p.thicknessExponent;
    columns.passesExponent[i] = p.passesExponent;
    columns.cornersExponent[i] = p.cornersExponent;
    air.forEach((column, k) => (column[i] = model.priors.airSd * (z[layout.air + k] ?? 0)));
    batch.forEach((column, k) => (column[i] = p.batchSd * (z[layout.batch + k] ?? 0)));
    sheet.forEach((column, k) => (column[i] = p.sheetSd * (z[layout.sheet + k] ?? 0)));
  }
  return { ...columns, air, batch, sheet };
};

/** The margin of one observation at one point: how far below the changeover of its own sheet it was cut, in ln speed. */
export const marginAt = (posterior: Posterior, point: number, cut: Observation): number =>
  (posterior.lnV50[point] ?? 0) +
  (posterior.powerExponent[point] ?? 0) * cut.lnPower -
  (posterior.thicknessExponent[point] ?? 0) * cut.lnThickness +
  (posterior.passesExponent[point] ?? 0) * cut.lnPasses -
  cornerLossAt(posterior, point, cut) +
  (posterior.air[cut.air]?.[point] ?? 0) +
  (posterior.batch[cut.batch]?.[point] ?? 0) +
  (posterior.sheet[cut.sheet]?.[point] ?? 0) -
  cut.lnSpeed;

/** The posterior carried by fewer points of equal weight, σ kept best: for probabilities of which two digits are shown. */
export const thinned = (posterior: Posterior, count: number): Posterior => {
  const chosen = systematicResample(posterior.weight, posterior.sigma, count);
  const kept = (values: Float64Array): Float64Array =>
    Float64Array.from(chosen, (i) => values[i] ?? 0);
  return {
    ...posterior,
    count,
    weight: new Float64Array(count).fill(1 / count),
    link: Uint8Array.from(chosen, (i) => posterior.link[i] ?? 0),
    lnV50: kept(posterior.lnV50),
    powerExponent: kept(posterior.powerExponent),
    sigma: kept(posterior.sigma),
    hangBand: kept(posterior.hangBand),
    flawsPerMetre: kept(posterior.flawsPerMetre),
    sheetSd: kept(posterior.sheetSd),
    batchSd: kept(posterior.batchSd),
    thicknessExponent: kept(posterior.thicknessExponent),
    passesExponent: kept(posterior.passesExponent),
    cornersExponent: kept(posterior.cornersExponent),
    air: posterior.air.map(kept),
    batch: posterior.batch.map(kept),
    sheet: posterior.sheet.map(kept),
  };
};

/** What less power in corners takes from the margin of coming out, in ln speed; it takes nothing from that of hanging. */
export const cornerLossAt = (posterior: Posterior, point: number, cut: Observation): number =>
  (posterior.cornersExponent[point] ?? 0) * cut.lnCorners;

/** Weighted mean and standard deviation of one column. */
export const meanSdOf = (
  posterior: Posterior,
  column: (point: number) => number,
): { readonly mean: number; readonly sd: number } => {
  let mean = 0;
  for (let i = 0; i < posterior.count; i += 1) mean += (posterior.weight[i] ?? 0) * column(i);
  let variance = 0;
  for (let i = 0; i < posterior.count; i += 1) {
    variance += (posterior.weight[i] ?? 0) * (column(i) - mean) ** 2;
  }
  return { mean, sd: Math.sqrt(variance) };
};
