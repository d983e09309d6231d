import type { Point } from './point.ts';

/** A spline of pieces: B-spline where all weights are alike, rational (NURBS) where they differ. */
export interface Nurbs {
  readonly degree: number;
  /** Never falling; as many as controls + degree + 1. */
  readonly knots: readonly number[];
  readonly controls: readonly Point[];
  /** One for each control, above 0. */
  readonly weights?: readonly number[];
}

/** One piece of a spline as a Bézier curve, with weights where they differ. */
export interface SplinePiece {
  readonly controls: readonly Point[];
  readonly weights?: readonly number[];
}

/** Why a spline is none; undefined where it can be drawn. */
export const wrongWithNurbs = ({ degree, knots, controls, weights }: Nurbs): string | undefined => {
  if (!Number.isInteger(degree) || degree < 1 || degree > mostDegree) return 'degree';
  if (controls.length <= degree) return 'controls';
  if (knots.length !== controls.length + degree + 1) return 'knots';
  if (!knots.every((knot, i) => Number.isFinite(knot) && knot >= (knots[i - 1] ?? knot)))
    return 'knots';
  if (weights === undefined) return undefined;
  return weights.length === controls.length && weights.every((w) => w > 0 && Number.isFinite(w))
    ? undefined
    : 'weights';
};

/** No drawing program goes above 25 (from memory); the work grows with the cube. */
export const mostDegree = 25;

/**
 * The Bézier pieces of a spline that `wrongWithNurbs` finds nothing wrong with, one a knot span that is not empty, by
 * its polar form: the control i of a piece from a to b is the blossom of a taken degree − i times and b taken i times
 * (Ramshaw, "Blossoming: a connect-the-dots approach to splines", 1987). O(spans · degree³).
 */
export function* splinePieces(spline: Nurbs): Generator<SplinePiece, void, undefined> {
  const { degree, knots, controls, weights } = spline;
  const even = weights === undefined || weights.every((w) => w === weights[0]);
  const raised = controls.map(([x, y], i): Raised => {
    const w = even ? 1 : (weights[i] ?? 1);
    return [x * w, y * w, w];
  });
  for (let span = degree; span < controls.length; span += 1) {
    const [from, to] = [knots[span] ?? NaN, knots[span + 1] ?? NaN];
    if (!(to > from)) continue;
    const around = raised.slice(span - degree, span + 1);
    const piece = Array.from({ length: degree + 1 }, (_, i) =>
      blossom(spline, span, around, (step) => (step <= degree - i ? from : to)),
    );
    yield {
      controls: piece.map(([x, y, w]): Point => [x / w, y / w]),
      ...(even ? {} : { weights: piece.map(([, , w]) => w) }),
    };
  }
}

/** A control times its weight, and the weight. */
type Raised = readonly [number, number, number];

/** De Boor's scheme with a parameter of its own at each step. */
const blossom = (
  { degree, knots }: Nurbs,
  span: number,
  around: readonly Raised[],
  at: (step: number) => number,
): Raised => {
  let row = around;
  for (let step = 1; step <= degree; step += 1) {
    const t = at(step);
    row = row.slice(1).map((to, j): Raised => {
      const from = row[j] ?? to;
      const [low, high] = [knots[span - degree + step + j] ?? NaN, knots[span + 1 + j] ?? NaN];
      const share = (t - low) / (high - low);
      return [
        lean(from[0], to[0], share),
        lean(from[1], to[1], share),
        lean(from[2], to[2], share),
      ];
    });
  }
  return row[0] ?? [0, 0, 1];
};

const lean = (from: number, to: number, share: number): number => (1 - share) * from + share * to;
