export interface BracketedRoot {
  readonly x: number;
  readonly evaluations: number;
  /** The root lies within this of `x`. */
  readonly halfWidth: number;
}

/** Where to look for a root, and how closely. */
export interface Bracket {
  readonly low: number;
  readonly high: number;
  /** Stop when the bracket is narrower than this part of the root. */
  readonly relative?: number;
}

/**
 * A root of a continuous function between two places where its signs differ; null where they do not. Ridders' rule
 * (1979): three points on the curve, an exponential taken out, the secant through the rest: at least as sure as
 * halving, and of second order once near. Each round costs two evaluations and at least halves the bracket.
 */
export const bracketedRoot = (
  f: (x: number) => number,
  { low, high, relative = 4e-16 }: Bracket,
): BracketedRoot | null => {
  let [left, right] = [low, high];
  let [fLeft, fRight] = [f(left), f(right)];
  let evaluations = 2;
  const at = (x: number): BracketedRoot => ({ x, evaluations, halfWidth: 0 });
  if (fLeft === 0) return at(left);
  if (fRight === 0) return at(right);
  if (!(fLeft < 0 !== fRight < 0) || Number.isNaN(fLeft + fRight)) return null;
  for (let round = 0; round < 200; round += 1) {
    const middle = left + (right - left) / 2;
    if (
      Math.abs(right - left) <= relative * Math.abs(middle) ||
      middle === left ||
      middle === right
    )
      break;
    const fMiddle = f(middle);
    const root = Math.sqrt(fMiddle * fMiddle - fLeft * fRight);
    const secant = middle + ((middle - left) * Math.sign(fLeft - fRight) * fMiddle) / root;
    const guess = Number.isFinite(secant) ? secant : middle;
    const fGuess = f(guess);
    evaluations += 2;
    if (fMiddle === 0) return at(middle);
    if (fGuess === 0) return at(guess);
    // Keep the narrowest pair of neighbours among the four whose signs differ.
    const ordered = [
      { x: left, y: fLeft },
      ...[
        { x: middle, y: fMiddle },
        { x: guess, y: fGuess },
      ].sort((a, b) => (a.x - b.x) * Math.sign(right - left)),
      { x: right, y: fRight },
    ];
    const crossing = ordered.findIndex(
      (point, i) => i > 0 && point.y < 0 !== (ordered[i - 1]?.y ?? NaN) < 0,
    );
    const [before, after] = [ordered[crossing - 1], ordered[crossing]];
    if (before === undefined || after === undefined) break;
    [left, fLeft, right, fRight] = [before.x, before.y, after.x, after.y];
  }
  return {
    x: Math.abs(fLeft) < Math.abs(fRight) ? left : right,
    evaluations,
    halfWidth: Math.abs(right - left),
  };
};
