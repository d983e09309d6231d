/** An arc in its plane: both coordinates in mm. */
export interface PlaneArc {
  readonly centre: readonly [number, number];
  readonly radiusMm: number;
  /** Always positive; the direction is the word's. */
  readonly sweepRad: number;
}

interface ArcTask {
  readonly start: readonly [number, number];
  readonly end: readonly [number, number];
  readonly clockwise: boolean;
  /** From the start, mm; either may be left out, not both. */
  readonly offset: readonly [number | undefined, number | undefined];
  readonly radiusMm: number | undefined;
  /** How much the radius may differ at start and end: 0.002 mm, or 0.0002 inch. */
  readonly toleranceMm: number;
}

/** The arc that a G2 or G3 asks for, or why there is none (RS-274/NGC 3.5.3). */
export const resolveArc = (task: ArcTask): PlaneArc | { readonly why: string } =>
  task.radiusMm === undefined ? byCentre(task) : byRadius(task, task.radiusMm);

const byCentre = ({
  start,
  end,
  clockwise,
  offset,
  toleranceMm,
}: ArcTask): PlaneArc | { why: string } => {
  if (offset[0] === undefined && offset[1] === undefined)
    return { why: 'arc without centre or radius' };
  const centre = [start[0] + (offset[0] ?? 0), start[1] + (offset[1] ?? 0)] as const;
  const radius = Math.hypot(start[0] - centre[0], start[1] - centre[1]);
  const atEnd = Math.hypot(end[0] - centre[0], end[1] - centre[1]);
  if (radius < 1e-9) return { why: 'arc with radius 0' };
  if (Math.abs(radius - atEnd) > toleranceMm) return { why: 'arc radius differs at start and end' };
  return { centre, radiusMm: radius, sweepRad: sweep(centre, start, end, clockwise) };
};

const byRadius = (
  { start, end, clockwise, toleranceMm }: ArcTask,
  radius: number,
): PlaneArc | { why: string } => {
  const chord = Math.hypot(end[0] - start[0], end[1] - start[1]);
  if (chord < 1e-9) return { why: 'radius-format arc with end equal to start' };
  const size = Math.abs(radius);
  if (chord / 2 > size + toleranceMm) return { why: 'arc radius too small to reach the end' };
  const height = Math.sqrt(Math.max(0, size ** 2 - (chord / 2) ** 2));
  // Standing at the start and looking to the end, the centre lies to the left for a short anticlockwise arc.
  const side = clockwise === radius > 0 ? -1 : 1;
  const [ux, uy] = [(end[0] - start[0]) / chord, (end[1] - start[1]) / chord];
  const centre = [
    (start[0] + end[0]) / 2 - side * height * uy,
    (start[1] + end[1]) / 2 + side * height * ux,
  ] as const;
  return { centre, radiusMm: size, sweepRad: sweep(centre, start, end, clockwise) };
};

type Pair = readonly [number, number];

/** A full turn where start and end are the same. */
const sweep = (centre: Pair, start: Pair, end: Pair, clockwise: boolean): number => {
  const from = Math.atan2(start[1] - centre[1], start[0] - centre[0]);
  const to = Math.atan2(end[1] - centre[1], end[0] - centre[0]);
  const turn = clockwise ? from - to : to - from;
  const full = 2 * Math.PI;
  const positive = ((turn % full) + full) % full;
  return positive < 1e-9 || full - positive < 1e-9 ? full : positive;
};
