import { quasiRandomPoints } from '../../num/quasiRandomPoints.ts';
import { systematicResample } from '../../num/systematicResample.ts';
import { target, type Target } from './likelihood.ts';
import { links as allLinks, type Link } from './links.ts';
import { parameterLayout, type Layout, type Model, type Observation } from './model.ts';
import { blankParameters, readParameters } from './parameters.ts';
import { lineSampler, type WeightedPoints } from './lineSampler.ts';
import { proposalFor, type Proposal } from './proposal.ts';

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
  /** Effects in ln speed by air level and batch: `[level][point]`. */
  readonly air: readonly Float64Array[];
  readonly batch: readonly Float64Array[];
  /** The effect of a sheet in ln speed, by point; of none for what was cut from no sheet. Reckoned when it is first asked for. */
  readonly sheetEffect: (sheet: number) => Float64Array | undefined;
  readonly links: readonly { readonly link: Link; readonly probability: number }[];
  /** ln of the evidence, links averaged by their prior weights. */
  readonly logEvidence: number;
  /** Kish's number for the lines, each counted as one point: what lies along a line is integrated, not drawn. */
  readonly effectivePoints: number;
  readonly converged: boolean;
  /** Whether the effects of sheets were integrated and not drawn. */
  readonly isIntegrated: boolean;
  /** What it took, in probabilities of an observation that were reckoned, some 0.3 µs each: the same on every computer. */
  readonly work: number;
}

/** Lines of an everyday answer: its 5 % quantile is good to about 0.03 of the posterior's sd. */
export const usualLines = 720;
/** Below this share of effective lines an answer is refused. */
const leastEffectiveShare = 0.05;
const leastEffectiveLines = 150;
/** Points that weigh less than this move nothing; many lie at the far ends of lines. */
const negligibleWeight = 1e-8;

/**
 * Posterior by importance sampling on a fixed quasi-random sequence of lines from {@link proposalFor}, shared among the
 * links by their prior weights. Deterministic: equal input gives equal bytes on one engine. About nine points a line.
 * Cost: O(lines · cells), ~12 ms for 24 cells.
 */
export const posteriorOf = (
  model: Model,
  linkWeights: LinkWeights,
  lines = usualLines,
): Posterior => {
  const layout = parameterLayout(model);
  const used = linksWith(linkWeights);
  const goals = used.map(({ link }) => target(model, layout, link));
  // The links' posteriors are so alike that one proposal serves all: that of the middle one.
  const middle = goals[goals.length >> 1];
  if (!middle) throw new Error('a posterior needs a link');
  const proposal = proposalFor(middle);
  const drawn = used.flatMap(({ link, share }, k): readonly LinkToDraw[] => {
    const goal = goals[k];
    return goal === undefined ? [] : [{ link, share, lines: share, goal, proposal }];
  });
  const { points, reckoned, ...summary } = drawLines(layout, drawn, lines);
  return {
    ...decoded(model, layout, points),
    ...summary,
    model,
    layout,
    count: points.count,
    isIntegrated: false,
    // A point of many coordinates takes their number beside its observations, and a line about half their square.
    work: reckoned * (model.observations.length + layout.size) + lines * 0.5 * layout.size ** 2,
  };
};

export type LinkWeights = Readonly<Partial<Record<Link['name'], number>>>;

/** The links that count at all, with weights that sum to 1. */
export const linksWith = (
  weights: LinkWeights,
): readonly { readonly link: Link; readonly share: number }[] => {
  const whole = allLinks.reduce((sum, { name }) => sum + (weights[name] ?? 0), 0);
  return allLinks
    .map((link) => ({ link, share: (weights[link.name] ?? 0) / whole }))
    .filter(({ share }) => share > 0);
};

/** One link's part of the lines. */
export interface LinkToDraw {
  readonly link: Link;
  /** Its prior weight; the weights sum to 1. */
  readonly share: number;
  /** The share of the lines that it is given. */
  readonly lines: number;
  readonly goal: Target;
  readonly proposal: Proposal;
}

/** Draws each link's lines and weighs their points. */
export const drawLines = (layout: Layout, drawn: readonly LinkToDraw[], lines: number) => {
  const gatherer = lineSampler(layout.size, quasiRandomPoints(layout.size), lines);
  let shared = 0;
  let from = 0;
  drawn.forEach(({ link, share, lines: part, goal, proposal }, k) => {
    shared += part;
    const to = k === drawn.length - 1 ? lines : Math.round(lines * shared);
    if (to === from) return;
    const factor = Math.log(share / (to - from)) - 0.5 * layout.size * Math.log(2 * Math.PI);
    gatherer.addLines(goal, proposal, { from, to, factor }, allLinks.indexOf(link));
    from = to;
  });
  const gathered = gatherer.points();
  const reckoned = gathered.count;
  const { kept, weight, logEvidence, effectiveLines } = weighed(gathered, lines);
  const link = Uint8Array.from(kept.link);
  return {
    points: kept,
    reckoned,
    weight,
    link,
    links: drawn.map((one) => {
      const index = allLinks.indexOf(one.link);
      let probability = 0;
      for (let i = 0; i < weight.length; i += 1) {
        if (link[i] === index) probability += weight[i] ?? NaN;
      }
      return { link: one.link, probability };
    }),
    logEvidence,
    effectivePoints: effectiveLines,
    converged:
      Number.isFinite(logEvidence) &&
      effectiveLines >= Math.min(leastEffectiveLines, leastEffectiveShare * lines),
  };
};

/** Weights that sum to 1, the negligible points left out, and what they say of the evidence and of themselves. */
const weighed = (points: WeightedPoints, lines: number) => {
  const { count, size, z, logWeight, link, line } = points;
  let most = -Infinity;
  for (let i = 0; i < count; i += 1) most = Math.max(most, logWeight[i] ?? NaN);
  let sum = 0;
  const ofLines = new Float64Array(lines);
  for (let i = 0; i < count; i += 1) {
    const weight = Math.exp((logWeight[i] ?? NaN) - most);
    sum += weight;
    ofLines[line[i] ?? NaN] = (ofLines[line[i] ?? NaN] ?? NaN) + weight;
  }
  let squares = 0;
  for (const weight of ofLines) squares += weight * weight;
  let kept = 0;
  let keptSum = 0;
  for (let i = 0; i < count; i += 1) {
    const weight = Math.exp((logWeight[i] ?? NaN) - most);
    if (weight < negligibleWeight * sum) continue;
    keptSum += weight;
    logWeight[kept] = weight;
    link[kept] = link[i] ?? NaN;
    z.copyWithin(kept * size, i * size, (i + 1) * size);
    kept += 1;
  }
  return {
    kept: { count: kept, size, z, link: link.subarray(0, kept) },
    weight: logWeight.slice(0, kept).map((weight) => weight / keptSum),
    logEvidence: most + Math.log(sum),
    effectiveLines: (sum * sum) / squares,
  };
};

/** The points' parameters on their own scales, the effects of sheets where they were drawn. */
export const decoded = (
  model: Model,
  layout: Layout,
  { count, z: draws }: Pick<WeightedPoints, 'count' | 'z'>,
) => {
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
    air.forEach((column, k) => (column[i] = model.priors.airSd * (z[layout.air + k] ?? NaN)));
    batch.forEach((column, k) => (column[i] = p.batchSd * (z[layout.batch + k] ?? NaN)));
    sheet.forEach((column, k) => (column[i] = p.sheetSd * (z[layout.sheet + k] ?? NaN)));
  }
  return { ...columns, air, batch, sheetEffect: (index: number) => sheet[index] };
};

/** The margin of one observation at one point: how far below the changeover of its own sheet it was cut, in ln speed. */
export const marginAt = (posterior: Posterior, point: number, cut: Observation): number =>
  (posterior.lnV50[point] ?? NaN) +
  (posterior.powerExponent[point] ?? NaN) * cut.lnPower -
  (posterior.thicknessExponent[point] ?? NaN) * cut.lnThickness +
  (posterior.passesExponent[point] ?? NaN) * cut.lnPasses -
  cornerLossAt(posterior, point, cut) +
  (posterior.air[cut.air]?.[point] ?? 0) +
  (posterior.batch[cut.batch]?.[point] ?? 0) +
  (posterior.sheetEffect(cut.sheet)?.[point] ?? 0) -
  cut.lnSpeed;

/** Reckons each sheet's effect when it is first asked for. */
export const onceASheet = (reckon: Posterior['sheetEffect']): Posterior['sheetEffect'] => {
  const known: (Float64Array | undefined)[] = [];
  return (sheet) => (known[sheet] ??= reckon(sheet));
};

/** The posterior carried by fewer points of equal weight, σ kept best: for probabilities of which two digits are shown. */
export const thinned = (posterior: Posterior, count: number): Posterior => {
  const chosen = systematicResample(posterior.weight, posterior.sigma, count);
  const kept = (values: Float64Array): Float64Array =>
    Float64Array.from(chosen, (i) => values[i] ?? NaN);
  return {
    ...posterior,
    count,
    weight: new Float64Array(count).fill(1 / count),
    link: Uint8Array.from(chosen, (i) => posterior.link[i] ?? NaN),
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
    sheetEffect: onceASheet((sheet) => {
      const all = posterior.sheetEffect(sheet);
      return all && kept(all);
    }),
  };
};

/** What less power in corners takes from the margin of coming out, in ln speed; it takes nothing from that of hanging. */
export const cornerLossAt = (posterior: Posterior, point: number, cut: Observation): number =>
  (posterior.cornersExponent[point] ?? NaN) * cut.lnCorners;

/** Weighted mean and standard deviation of one column. */
export const meanSdOf = (
  posterior: Posterior,
  column: (point: number) => number,
): { readonly mean: number; readonly sd: number } => {
  let mean = 0;
  for (let i = 0; i < posterior.count; i += 1) mean += (posterior.weight[i] ?? NaN) * column(i);
  let variance = 0;
  for (let i = 0; i < posterior.count; i += 1) {
    variance += (posterior.weight[i] ?? NaN) * (column(i) - mean) ** 2;
  }
  return { mean, sd: Math.sqrt(variance) };
};
