/** Log of the marginal of z(ln σ), up to a constant, at one place. */
export interface ScatterNode {
  readonly position: number;
  readonly logMarginal: number;
}

const gridSteps = 240;
/** Share of the draws that come from a wide normal instead, so that no tail is missed. */
const safeguard = 0.04;

/**
 * The marginal of z(ln σ): log density interpolated through the nodes (parabolas through three neighbours, blended),
 * tabulated as piecewise linear density, drawn by inverting its integral exactly.
 */
export const marginalFrom = (
  nodes: readonly ScatterNode[],
): ((u: number) => { position: number; logDensity: number }) => {
  const first = nodes[0];
  const last = nodes.at(-1);
  if (!first || !last) throw new Error('a proposal has at least two nodes');
  const width = last.position - first.position;
  const low = first.position - 0.35 * width;
  const high = last.position + 0.35 * width;
  const step = (high - low) / gridSteps;
  const logs = Float64Array.from({ length: gridSteps + 1 }, (_, i) =>
    logThrough(nodes, low + i * step),
  );
  // Of the curve, not of its nodes: between far apart ones it may rise above them.
  const best = logs.reduce((most, log) => Math.max(most, log), -Infinity);
  const density = logs.map((log) => Math.exp(Math.max(-60, log - best)));
  const centre = 0.5 * (low + high);
  const spread = width / 4;
  const trapezoid = (values: Float64Array): number => {
    let sum = 0;
    for (let i = 0; i < gridSteps; i += 1)
      sum += 0.5 * step * ((values[i] ?? NaN) + (values[i + 1] ?? NaN));
    return sum;
  };
  const total = trapezoid(density);
  const wide = Float64Array.from(density, (_, i) =>
    Math.exp(-0.5 * ((low + i * step - centre) / spread) ** 2),
  );
  const wideTotal = trapezoid(wide);
  const mixed = Float64Array.from(
    density,
    (value, i) => ((1 - safeguard) * value) / total + (safeguard * (wide[i] ?? NaN)) / wideTotal,
  );
  const cumulative = new Float64Array(gridSteps + 1);
  for (let i = 0; i < gridSteps; i += 1) {
    cumulative[i + 1] =
      (cumulative[i] ?? NaN) + 0.5 * step * ((mixed[i] ?? NaN) + (mixed[i + 1] ?? NaN));
  }
  const whole = cumulative[gridSteps] ?? NaN;
  return (u) => {
    const wanted = u * whole;
    let from = 0;
    let to = gridSteps;
    while (to - from > 1) {
      const middle = (from + to) >> 1;
      if ((cumulative[middle] ?? NaN) <= wanted) from = middle;
      else to = middle;
    }
    const d0 = mixed[from] ?? NaN;
    const slope = ((mixed[from + 1] ?? NaN) - d0) / step;
    const rest = wanted - (cumulative[from] ?? NaN);
    // rest = d0·x + slope·x²/2, solved without cancellation.
    const x = (2 * rest) / (d0 + Math.sqrt(Math.max(0, d0 * d0 + 2 * slope * rest)));
    return { position: low + from * step + x, logDensity: Math.log((d0 + slope * x) / whole) };
  };
};

/** Cubic through the nodes' log marginals (Catmull–Rom on even spacing), straight on beyond them at the last slope. */
const logThrough = (nodes: readonly ScatterNode[], at: number): number => {
  const spacing = (nodes[1]?.position ?? NaN) - (nodes[0]?.position ?? NaN);
  const place = (at - (nodes[0]?.position ?? NaN)) / spacing;
  const value = (i: number): number => nodes[i]?.logMarginal ?? NaN;
  const lastIndex = nodes.length - 1;
  if (place <= 0) return value(0) + Math.max(0.2, value(1) - value(0)) * place;
  if (place >= lastIndex) {
    return (
      value(lastIndex) +
      Math.min(-0.2, value(lastIndex) - value(lastIndex - 1)) * (place - lastIndex)
    );
  }
  const i = Math.min(lastIndex - 1, Math.floor(place));
  const t = place - i;
  const before = i > 0 ? value(i - 1) : 2 * value(0) - value(1);
  const after = i + 2 <= lastIndex ? value(i + 2) : 2 * value(lastIndex) - value(lastIndex - 1);
  const m0 = 0.5 * (value(i + 1) - before);
  const m1 = 0.5 * (after - value(i));
  return (
    (2 * t ** 3 - 3 * t ** 2 + 1) * value(i) +
    (t ** 3 - 2 * t ** 2 + t) * m0 +
    (-2 * t ** 3 + 3 * t ** 2) * value(i + 1) +
    (t ** 3 - t ** 2) * m1
  );
};
