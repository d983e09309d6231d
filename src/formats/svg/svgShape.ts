import { circleArc, type EllipseArc } from '../../core/path/ellipseArc.ts';
import type { Point } from '../../core/path/point.ts';
import { readPathData } from './pathData.ts';
import type { PathSink } from './pathPen.ts';
import { svgLength } from './svgLength.ts';

type Attributes = Readonly<Record<string, string>>;

/** Elements that draw lines. */
export const shapeNames: ReadonlySet<string> = new Set([
  'path',
  'line',
  'polyline',
  'polygon',
  'rect',
  'circle',
  'ellipse',
]);

interface View {
  readonly width: number;
  readonly height: number;
  /** What `em` is of; 16 where nothing is said. */
  readonly em?: number;
}

/**
 * Draws what a shape draws (SVG 2, 10), in its own units; `view` is what its percentages are of. Gives back what is wrong
 * with its data, if anything: what comes before is drawn.
 */
export const drawShape = (
  name: string,
  attributes: Attributes,
  view: View,
  sink: PathSink,
): string | undefined => {
  const across = (key: string): number => svgLength(attributes[key], view.width, view.em) ?? 0;
  const down = (key: string): number => svgLength(attributes[key], view.height, view.em) ?? 0;
  const radius = (key: string, whole: number): number | undefined => {
    const value = svgLength(attributes[key], whole, view.em);
    return value === undefined || value < 0 ? undefined : value;
  };
  switch (name) {
    case 'path':
      return readPathData(attributes['d'] ?? '', sink);
    case 'line':
      sink.moveTo([across('x1'), down('y1')]);
      sink.lineTo([across('x2'), down('y2')]);
      return undefined;
    case 'polyline':
    case 'polygon':
      return drawPoints(attributes['points'] ?? '', name === 'polygon', sink);
    case 'rect': {
      const [rx, ry] = [radius('rx', view.width), radius('ry', view.height)];
      drawRect(
        [across('x'), down('y')],
        [across('width'), down('height')],
        [rx ?? ry ?? 0, ry ?? rx ?? 0],
        sink,
      );
      return undefined;
    }
    case 'circle': {
      const diagonal = Math.hypot(view.width, view.height) / Math.SQRT2;
      const r = radius('r', diagonal) ?? 0;
      drawEllipse([across('cx'), down('cy')], [r, r], sink);
      return undefined;
    }
    case 'ellipse': {
      const [rx, ry] = [radius('rx', view.width), radius('ry', view.height)];
      drawEllipse([across('cx'), down('cy')], [rx ?? ry ?? 0, ry ?? rx ?? 0], sink);
      return undefined;
    }
    default:
      return undefined;
  }
};

/** Figures two by two; an odd one at the end is a slip, and what comes before is drawn. */
const drawPoints = (points: string, loops: boolean, sink: PathSink): string | undefined => {
  const strange = points.search(/[^\d\s,.e+-]/i);
  const figures = strange < 0 ? points : points.slice(0, strange);
  const slip = figures.trim() === '' ? undefined : readPathData(`M${figures}`, sink);
  if (loops) sink.close();
  return slip ?? (strange < 0 ? undefined : points.slice(strange, strange + 20));
};

type Pair = readonly [number, number];

const drawRect = ([x, y]: Point, [w, h]: Pair, [rx, ry]: Pair, sink: PathSink): void => {
  if (!(w > 0) || !(h > 0)) return;
  const [a, b] = [Math.min(rx, w / 2), Math.min(ry, h / 2)];
  if (a === 0 || b === 0) {
    sink.moveTo([x, y]);
    sink.lineTo([x + w, y]);
    sink.lineTo([x + w, y + h]);
    sink.lineTo([x, y + h]);
    sink.close();
    return;
  }
  const corner = (centre: Point, quarter: number, to: Point): void =>
    sink.arcTo(quarterArc(centre, [a, b], quarter), to);
  sink.moveTo([x + a, y]);
  sink.lineTo([x + w - a, y]);
  corner([x + w - a, y + b], 3, [x + w, y + b]);
  sink.lineTo([x + w, y + h - b]);
  corner([x + w - a, y + h - b], 0, [x + w - a, y + h]);
  sink.lineTo([x + a, y + h]);
  corner([x + a, y + h - b], 1, [x, y + h - b]);
  sink.lineTo([x, y + b]);
  corner([x + a, y + b], 2, [x + a, y]);
  sink.close();
};

const quarterArc = (centre: Point, [a, b]: Pair, quarter: number): EllipseArc => ({
  ...circleArc(centre, 1, (quarter * Math.PI) / 2, Math.PI / 2),
  axisA: [a, 0],
  axisB: [0, b],
});

const drawEllipse = ([cx, cy]: Point, [rx, ry]: Pair, sink: PathSink): void => {
  if (!(rx > 0) || !(ry > 0)) return;
  const start: Point = [cx + rx, cy];
  sink.moveTo(start);
  sink.arcTo({ ...circleArc([cx, cy], 1, 0, 2 * Math.PI), axisA: [rx, 0], axisB: [0, ry] }, start);
  sink.close();
};
