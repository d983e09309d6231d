export interface Nodes {
  readonly x: readonly number[];
  readonly weights: readonly number[];
}

/**
 * Points and weights that integrate polynomials up to degree 2n − 1 exactly between two bounds. Newton’s rule on the
 * Legendre polynomial from Tricomi’s first guess. O(n²). NIST Digital Library of Mathematical Functions 3.5(v).
 */
export const gaussLegendre = (n: number, low = -1, high = 1): Nodes => {
  const [middle, half] = [(low + high) / 2, (high - low) / 2];
  const nodes = Array.from({ length: n }, (_, i) => {
    const guess = -Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    const { x, slope } = polish(n, guess);
    return { x: middle + half * x, weight: (2 * half) / ((1 - x * x) * slope * slope) };
  });
  return { x: nodes.map((node) => node.x), weights: nodes.map((node) => node.weight) };
};

const polish = (n: number, guess: number): { readonly x: number; readonly slope: number } => {
  let x = guess;
  let slope = NaN;
  for (let round = 0; round < 20; round += 1) {
    let [before, here] = [1, x];
    for (let k = 2; k <= n; k += 1) {
      [before, here] = [here, ((2 * k - 1) * x * here - (k - 1) * before) / k];
    }
    slope = (n * (x * here - before)) / (x * x - 1);
    const step = here / slope;
    x -= step;
    if (Math.abs(step) < 1e-16) break;
  }
  return { x, slope };
};
