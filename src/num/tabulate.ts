/**
 * A smooth sigmoid F with F(−x) = 1 − F(x), read from a table by cubic Hermite interpolation inside ±`reach` and
 * computed outside. Error below step⁴/384·max|F⁗|: 1e-11 for the normal at step 1/128. About ten times faster than
 * the error function, for inner loops that need absolute, not relative, accuracy.
 * de Boor, A Practical Guide to Splines, ch. IV.
 */
export const tabulateSigmoid = (
  cdf: (x: number) => number,
  pdf: (x: number) => number,
  reach = 8,
  stepsPerUnit = 128,
): ((x: number) => number) => {
  const count = 2 * reach * stepsPerUnit + 1;
  const values = new Float64Array(count);
  const slopes = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const x = i / stepsPerUnit - reach;
    values[i] = cdf(x);
    slopes[i] = pdf(x) / stepsPerUnit;
  }
  return (x) => {
    const position = (x + reach) * stepsPerUnit;
    const i = Math.floor(position);
    if (!(i >= 0 && i < count - 1)) return cdf(x);
    const u = position - i;
    const f0 = values[i] ?? 0;
    const f1 = values[i + 1] ?? 0;
    const rise = f1 - f0;
    const s0 = (slopes[i] ?? 0) - rise;
    const s1 = rise - (slopes[i + 1] ?? 0);
    const v = 1 - u;
    return f0 + u * rise + u * v * (v * s0 + u * s1);
  };
};
