import { pointOnArc, type EllipseArc } from '../../src/core/path/ellipseArc.ts';
import type { Point } from '../../src/core/path/point.ts';
import { readPathData } from '../../src/formats/svg/pathData.ts';

const figures = (points: readonly Point[]): string => points.flat().join(' ');

/**
 * Path data with each arc as the cubics that Chromium draws for it: as many equal parts as there are quarter turns, and a
 * milliradian more to each, with handles of 4/3·tan(θ/4). A quarter of a circle is 1.4e-4 longer so.
 */
export const arcsAsCubics = (data: string): string => {
  const said: string[] = [];
  readPathData(data, {
    moveTo: (to) => said.push(`M${figures([to])}`),
    lineTo: (to) => said.push(`L${figures([to])}`),
    curveTo: (controls) => said.push(`${controls.length === 3 ? 'C' : 'Q'}${figures(controls)}`),
    arcTo: (arc, to) => said.push(...cubicsOf(arc, to)),
    close: () => said.push('Z'),
  });
  return said.join('');
};

const cubicsOf = (arc: EllipseArc, to: Point): string[] => {
  const count = Math.max(1, Math.ceil(Math.abs(arc.turnRad) / (Math.PI / 2 + 0.001)));
  const step = arc.turnRad / count;
  const handle = (4 / 3) * Math.tan(step / 4);
  return Array.from({ length: count }, (_, i) => {
    const [from, until] = [arc.fromRad + i * step, arc.fromRad + (i + 1) * step];
    const controls: readonly Point[] = [
      leaving(arc, from, handle),
      leaving(arc, until, -handle),
      i + 1 < count ? pointOnArc(arc, until) : to,
    ];
    return `C${figures(controls)}`;
  });
};

/** So far along the tangent at a place of the arc. */
const leaving = (arc: EllipseArc, rad: number, by: number): Point => {
  const [x, y] = pointOnArc(arc, rad);
  const [cos, sin] = [by * Math.cos(rad), by * Math.sin(rad)];
  return [x + cos * arc.axisB[0] - sin * arc.axisA[0], y + cos * arc.axisB[1] - sin * arc.axisA[1]];
};
