import type { SmallModel, SmallPoint } from './smallModel.ts';

type Quantity = keyof SmallPoint;

export interface QuadratureSummary {
  readonly logEvidence: number;
  readonly of: Readonly<Record<Quantity, { readonly mean: number; readonly sd: number }>>;
  /** The p-quantile of one quantity, from a fine histogram of the grid's weights. */
  readonly quantile: (quantity: Quantity, p: number) => number;
}

/** How far the grid goes: prior sds in the first pass, posterior sds in the second. */
const farPrior = 5;
const farPosterior = 7;

/**
 * The posterior by the trapezoid rule on a product grid: a coarse pass over the prior finds where the posterior is, a second
 * lays the grid there. O(nodes^dimensions · cells).
 */
export const quadrature = (model: SmallModel, nodes: number): QuadratureSummary => {
  const { dimensions } = model;
  const whole = Array.from({ length: dimensions }, (): [number, number] => [-farPrior, farPrior]);
  const coarse = marginals(model, whole, Math.min(nodes, dimensions === 4 ? 25 : 41));
  const ranges = coarse.map(({ mean, sd }): [number, number] => [
    Math.max(-farPrior - 1, mean - farPosterior * sd),
    Math.min(farPrior + 1, mean + farPosterior * sd),
  ]);
  const points: SmallPoint[] = [];
  const heights: number[] = [];
  eachNode(ranges, nodes, (z, edges) => {
    points.push(model.read(z));
    heights.push(model.logDensity(z) - edges * Math.LN2);
  });
  const top = heights.reduce((a, b) => Math.max(a, b), -Infinity);
  const weights = heights.map((height) => Math.exp(height - top));
  const total = weights.reduce((a, b) => a + b, 0);
  const cell = ranges.reduce((size, [low, high]) => (size * (high - low)) / (nodes - 1), 1);
  const summary = (quantity: Quantity) => {
    let mean = 0;
    points.forEach((point, i) => (mean += ((weights[i] ?? 0) * point[quantity]) / total));
    let variance = 0;
    points.forEach((point, i) => {
      variance += ((weights[i] ?? 0) * (point[quantity] - mean) ** 2) / total;
    });
    return { mean, sd: Math.sqrt(variance) };
  };
  const of = {
    a: summary('a'),
    b: summary('b'),
    sigma: summary('sigma'),
    delta: summary('delta'),
    v97: summary('v97'),
  };
  return {
    logEvidence: top + Math.log(total * cell),
    of,
    quantile: (quantity, p) => {
      const order = points
        .map((point, i) => ({ value: point[quantity], weight: weights[i] ?? 0 }))
        .sort((one, other) => one.value - other.value);
      return quantileOf(order, p * total);
    },
  };
};

/** Equal values are one step; between the middles of steps the quantile is linear. */
const quantileOf = (
  order: readonly { readonly value: number; readonly weight: number }[],
  wanted: number,
): number => {
  let below = 0;
  let [lastMiddle, lastValue] = [0, order[0]?.value ?? NaN];
  for (let i = 0; i < order.length;) {
    const value = order[i]?.value ?? NaN;
    let weight = 0;
    while (i < order.length && (order[i]?.value ?? NaN) - value <= 1e-12 * Math.abs(value)) {
      weight += order[i]?.weight ?? 0;
      i += 1;
    }
    const middle = below + weight / 2;
    if (middle >= wanted && middle > lastMiddle) {
      return lastValue + ((value - lastValue) * (wanted - lastMiddle)) / (middle - lastMiddle);
    }
    below += weight;
    [lastMiddle, lastValue] = [middle, value];
  }
  return lastValue;
};

/** Mean and sd of each z over a grid. */
const marginals = (
  model: SmallModel,
  ranges: readonly (readonly [number, number])[],
  nodes: number,
): readonly { readonly mean: number; readonly sd: number }[] => {
  const zs: Float64Array[] = [];
  const heights: number[] = [];
  eachNode(ranges, nodes, (z) => {
    zs.push(Float64Array.from(z));
    heights.push(model.logDensity(z));
  });
  const top = heights.reduce((a, b) => Math.max(a, b), -Infinity);
  const weights = heights.map((height) => Math.exp(height - top));
  const total = weights.reduce((a, b) => a + b, 0);
  return ranges.map(([low, high], d) => {
    const average = (value: (z: number) => number): number =>
      zs.reduce((sum, z, i) => sum + (weights[i] ?? 0) * value(z[d] ?? 0), 0) / total;
    const mean = average((z) => z);
    // A coarse grid sees a narrow posterior as wide as its own spacing at the least.
    const sd = Math.max((high - low) / (nodes - 1) / 2, Math.sqrt(average((z) => (z - mean) ** 2)));
    return { mean, sd };
  });
};

/** Visits a product grid; `edges` counts the axes on whose ends the node lies. */
const eachNode = (
  ranges: readonly (readonly [number, number])[],
  nodes: number,
  visit: (z: Float64Array, edges: number) => void,
): void => {
  const z = new Float64Array(ranges.length);
  const index = ranges.map(() => 0);
  const count = nodes ** ranges.length;
  for (let k = 0; k < count; k += 1) {
    let rest = k;
    let edges = 0;
    ranges.forEach(([low, high], d) => {
      index[d] = rest % nodes;
      rest = Math.floor(rest / nodes);
      if (index[d] === 0 || index[d] === nodes - 1) edges += 1;
      z[d] = low + ((high - low) * (index[d] ?? 0)) / (nodes - 1);
    });
    visit(z, edges);
  }
};
