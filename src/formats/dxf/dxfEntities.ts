import { z } from 'zod';
import { arcPoints } from '../../core/path/arc.ts';
import { distanceMm, type Point } from '../../core/path/point.ts';
import type { Polyline } from '../../core/path/polyline.ts';

const point = z.looseObject({ x: z.number(), y: z.number() });
const vertex = point.extend({ bulge: z.number().optional() });
const base = { layer: z.string().default('0'), colorIndex: z.number().optional() };

/** The kinds of entity that are read, as the parsing library hands them over; angles in radians. */
export const dxfEntity = z.discriminatedUnion('type', [
  z.looseObject({ ...base, type: z.literal('LINE'), vertices: z.array(vertex).min(2) }),
  z.looseObject({
    ...base,
    type: z.literal('LWPOLYLINE'),
    vertices: z.array(vertex),
    shape: z.boolean().optional(),
  }),
  z.looseObject({
    ...base,
    type: z.literal('POLYLINE'),
    vertices: z.array(vertex),
    shape: z.boolean().optional(),
  }),
  z.looseObject({ ...base, type: z.literal('CIRCLE'), center: point, radius: z.number() }),
  z.looseObject({
    ...base,
    type: z.literal('ARC'),
    center: point,
    radius: z.number(),
    startAngle: z.number(),
    endAngle: z.number(),
  }),
  z.looseObject({
    ...base,
    type: z.literal('ELLIPSE'),
    center: point,
    majorAxisEndPoint: point,
    axisRatio: z.number(),
    startAngle: z.number(),
    endAngle: z.number(),
  }),
]);

export type DxfEntity = z.infer<typeof dxfEntity>;

/** How far a chord may stray from its curve, in drawing units. */
const tolerance = 0.01;
const full = 2 * Math.PI;

/** An entity as points, in drawing units. */
export const entityPoints = (entity: DxfEntity): Polyline => {
  switch (entity.type) {
    case 'LINE':
      return entity.vertices.slice(0, 2).map(xy);
    case 'LWPOLYLINE':
    case 'POLYLINE':
      return polylinePoints(entity.vertices, entity.shape ?? false);
    case 'CIRCLE':
      return arcOf(entity.center, entity.radius, 0, full);
    case 'ARC':
      return arcOf(
        entity.center,
        entity.radius,
        entity.startAngle,
        turn(entity.startAngle, entity.endAngle),
      );
    case 'ELLIPSE':
      return ellipsePoints(entity);
  }
};

const xy = ({ x, y }: z.infer<typeof point>): Point => [x, y];

/** Anticlockwise, as DXF has all its angles; the same angle twice is a whole turn. */
const turn = (from: number, to: number): number => {
  const angle = (((to - from) % full) + full) % full;
  return angle < 1e-9 ? full : angle;
};

const arcOf = (
  centre: z.infer<typeof point>,
  radiusMm: number,
  fromRad: number,
  turnRad: number,
): Polyline => arcPoints({ centre: xy(centre), radiusMm, fromRad, turnRad }, tolerance);

const polylinePoints = (vertices: readonly z.infer<typeof vertex>[], loops: boolean): Polyline => {
  const [first] = vertices;
  if (first === undefined) return [];
  const ends = [...vertices.slice(1), ...(loops ? [first] : [])];
  return [
    xy(first),
    ...ends.flatMap((to, i) => {
      const from = vertices[i] ?? first;
      return bulgePoints(xy(from), xy(to), from.bulge ?? 0);
    }),
  ];
};

/** A bulge is the tangent of a quarter of the arc's angle, positive anticlockwise. Gives the points after the first. */
const bulgePoints = (from: Point, to: Point, bulge: number): readonly Point[] => {
  const chord = distanceMm(from, to);
  if (Math.abs(bulge) < 1e-9 || chord < 1e-9) return [to];
  const turnRad = 4 * Math.atan(bulge);
  const radius = Math.abs((chord * (1 + bulge ** 2)) / (4 * bulge));
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  // From the middle of the chord to the centre: to the left of the way for a small anticlockwise arc.
  const height = ((1 - bulge ** 2) / (4 * bulge)) * chord;
  const centre: Point = [
    middle[0] - ((to[1] - from[1]) / chord) * height,
    middle[1] + ((to[0] - from[0]) / chord) * height,
  ];
  const fromRad = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
  const points = arcPoints({ centre, radiusMm: radius, fromRad, turnRad }, tolerance);
  return [...points.slice(1, -1), to];
};

const ellipsePoints = (entity: Extract<DxfEntity, { type: 'ELLIPSE' }>): Polyline => {
  const [ax, ay] = xy(entity.majorAxisEndPoint);
  const major = Math.hypot(ax, ay);
  const unit = arcPoints(
    {
      centre: [0, 0],
      radiusMm: 1,
      fromRad: entity.startAngle,
      turnRad: turn(entity.startAngle, entity.endAngle),
    },
    tolerance / Math.max(major, tolerance),
  );
  return unit.map(([c, s]): Point => [
    entity.center.x + ax * c - ay * entity.axisRatio * s,
    entity.center.y + ay * c + ax * entity.axisRatio * s,
  ]);
};
