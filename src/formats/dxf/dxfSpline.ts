import { mostDegree, splinePieces, wrongWithNurbs } from '../../core/path/nurbs.ts';
import { splineThrough } from '../../core/path/splineThrough.ts';
import type { Stroke } from './dxfPart.ts';
import type { DxfValues } from './dxfValues.ts';

export interface DxfSpline {
  readonly stroke: Stroke;
  /** Only points on it are known, not the curve itself. */
  readonly guessed: boolean;
}

/** Steps of calculation that a spline costs: its controls times the cube of its degree. */
export const splineWork = (values: DxfValues): number =>
  values.points(10).length * Math.min(mostDegree, values.number(71, 3)) ** 3 +
  30 * values.points(11).length;

/**
 * A SPLINE by its controls, knots and weights; where these are missing or wrong, by the points that it was fitted
 * through. Undefined where neither will do.
 */
export const splineStroke = (values: DxfValues): DxfSpline | undefined => {
  const controls = values.points(10);
  const weights = values.numbers(41);
  const nurbs = {
    degree: values.number(71, 3),
    knots: values.numbers(40),
    controls,
    ...(weights.length === 0 ? {} : { weights }),
  };
  if (wrongWithNurbs(nurbs) === undefined) {
    const steps = [...splinePieces(nurbs)].map((piece) => ({ piece }));
    const from = steps[0]?.piece.controls[0];
    return from === undefined ? undefined : { stroke: { from, steps }, guessed: false };
  }
  return fittedStroke(values);
};

const fittedStroke = (values: DxfValues): DxfSpline | undefined => {
  const points = values.points(11);
  const [from] = points;
  if (from === undefined || points.length < 2 || !points.flat().every(Number.isFinite))
    return undefined;
  const [startWay] = values.points(12);
  const [endWay] = values.points(13);
  const closed = (values.number(70, 0) & 1) === 1;
  const pieces = splineThrough({
    points,
    closed,
    ...(startWay === undefined ? {} : { startWay }),
    ...(endWay === undefined ? {} : { endWay }),
  });
  const steps = pieces.map((controls) => ({ controls: controls.slice(1) }));
  return { stroke: { from, steps }, guessed: true };
};
