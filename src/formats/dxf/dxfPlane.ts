import type { Matrix } from '../../core/path/matrix.ts';
import type { DxfValues } from './dxfValues.ts';

type Vector = readonly [x: number, y: number, z: number];

/**
 * The map from an entity's own plane to the drawing's, seen from above, by its extrusion direction (DXF reference,
 * "Arbitrary axis algorithm"): mirrored drawings have it point downwards.
 */
export const planeOf = (values: DxfValues, elevation = 0): Matrix => {
  const normal = normalOf(values);
  const across = Math.abs(normal[0]) < 1 / 64 && Math.abs(normal[1]) < 1 / 64;
  const x = unit(cross(across ? [0, 1, 0] : [0, 0, 1], normal));
  const y = unit(cross(normal, x));
  return [x[0], x[1], y[0], y[1], normal[0] * elevation, normal[1] * elevation];
};

/** Upwards where nothing is said, or nothing that points anywhere. */
export const normalOf = (values: DxfValues): Vector => {
  const said: Vector = [values.number(210, 0), values.number(220, 0), values.number(230, 1)];
  const length = Math.hypot(...said);
  return length > 0 && Number.isFinite(length) ? unit(said) : [0, 0, 1];
};

export const cross = ([a, b, c]: Vector, [d, e, f]: Vector): Vector => [
  b * f - c * e,
  c * d - a * f,
  a * e - b * d,
];

const unit = (vector: Vector): Vector => {
  const length = Math.hypot(...vector);
  return [vector[0] / length, vector[1] / length, vector[2] / length];
};
