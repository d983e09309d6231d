import { circleArc, pointOnArc, type EllipseArc } from '../../core/path/ellipseArc.ts';
import { distanceMm, type Point } from '../../core/path/point.ts';
import type { Step, Stroke } from './dxfPart.ts';
import { cross, normalOf } from './dxfPlane.ts';
import type { DxfValues } from './dxfValues.ts';

const full = 2 * Math.PI;

/** Anticlockwise, as DXF has all its angles; the same angle twice is a whole turn. */
const turnBetween = (fromRad: number, toRad: number): number => {
  const angle = (((toRad - fromRad) % full) + full) % full;
  return angle < 1e-9 ? full : angle;
};

const arcStroke = (arc: EllipseArc): Stroke => ({
  from: pointOnArc(arc, arc.fromRad),
  steps: [{ arc, to: pointOnArc(arc, arc.fromRad + arc.turnRad) }],
});

export const lineStroke = (values: DxfValues): Stroke => ({
  from: values.point(10),
  steps: [{ to: values.point(11) }],
});

/** CIRCLE, and ARC with its angles in degrees. */
export const roundStroke = (values: DxfValues): Stroke | undefined => {
  const [centre, radius] = [values.point(10), values.number(40)];
  if (!(radius > 0)) return undefined;
  if (values.type === 'CIRCLE') {
    const { from, steps } = arcStroke(circleArc(centre, radius, 0, full));
    return { from, steps: steps.map((step) => ({ ...step, to: from })) };
  }
  const from = (values.number(50) * Math.PI) / 180;
  const turn = turnBetween(from, (values.number(51) * Math.PI) / 180);
  return arcStroke(circleArc(centre, radius, from, turn));
};

/** ELLIPSE, in the drawing's own plane: its minor axis lies at a right angle to major axis and extrusion direction. */
export const ellipseStroke = (values: DxfValues): Stroke => {
  const major = [values.number(11), values.number(21), values.number(31, 0)] as const;
  const ratio = values.number(40);
  const minor = cross(normalOf(values), major);
  const from = values.number(41, 0);
  return arcStroke({
    centre: values.point(10),
    axisA: [major[0], major[1]],
    axisB: [minor[0] * ratio, minor[1] * ratio],
    fromRad: from,
    turnRad: turnBetween(from, values.number(42, full)),
  });
};

export interface Corner {
  readonly at: Point;
  /** The tangent of a quarter of the angle of the arc to the next corner, positive anticlockwise. */
  readonly bulge: number;
}

/** The corners of a light polyline, told in the order of its groups. */
export const cornersOf = (values: DxfValues): readonly Corner[] => {
  const found: { x: number; y: number; bulge: number }[] = [];
  for (const { code, value } of values.groups) {
    if (code === 10) found.push({ x: values.figure(value), y: 0, bulge: 0 });
    const last = found.at(-1);
    if (last === undefined) continue;
    if (code === 20) last.y = values.figure(value);
    if (code === 42) last.bulge = values.figure(value);
  }
  return found.map(({ x, y, bulge }) => ({ at: [x, y], bulge }));
};

export const polylineStroke = (corners: readonly Corner[], closed: boolean): Stroke | undefined => {
  const [first] = corners;
  if (first === undefined || corners.length < 2) return undefined;
  const steps = corners.slice(1).map(({ at }, i) => stepTo(corners[i] ?? first, at));
  const last = corners.at(-1) ?? first;
  return { from: first.at, steps: closed ? [...steps, stepTo(last, first.at)] : steps };
};

const stepTo = ({ at, bulge }: Corner, to: Point): Step => {
  const chord = distanceMm(at, to);
  if (Math.abs(bulge) < 1e-9 || chord === 0) return { to };
  // From the middle of the chord to the centre: to the left of the way for a small anticlockwise arc.
  const height = (1 - bulge ** 2) / (4 * bulge);
  const centre: Point = [
    (at[0] + to[0]) / 2 - (to[1] - at[1]) * height,
    (at[1] + to[1]) / 2 + (to[0] - at[0]) * height,
  ];
  const radius = Math.abs((chord * (1 + bulge ** 2)) / (4 * bulge));
  const from = Math.atan2(at[1] - centre[1], at[0] - centre[0]);
  return { to, arc: circleArc(centre, radius, from, 4 * Math.atan(bulge)) };
};
