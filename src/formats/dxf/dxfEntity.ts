import { shift, stretch, times, turn, unchanged, type Matrix } from '../../core/path/matrix.ts';
import type { DxfCommon, DxfPart, Stroke } from './dxfPart.ts';
import { planeOf } from './dxfPlane.ts';
import { splineStroke } from './dxfSpline.ts';
import {
  cornersOf,
  ellipseStroke,
  lineStroke,
  polylineStroke,
  roundStroke,
  type Corner,
} from './dxfStrokes.ts';
import { plainWords, unescaped } from './dxfText.ts';
import type { DxfValues } from './dxfValues.ts';

/** An entity as a part of the drawing; what cannot be read is said to be what it is. Nothing for what draws nothing. */
export const partOf = (
  values: DxfValues,
  vertices: readonly DxfValues[] = [],
): DxfPart | undefined => {
  const common = commonOf(values);
  const unread: DxfPart = { ...common, kind: 'unread', what: values.type.slice(0, 40) };
  if (values.type === 'VIEWPORT') return undefined;
  if (texts.has(values.type)) return textPart(values, common);
  if (values.type === 'INSERT') return insertPart(values, common);
  const drawn = strokeOf(values, vertices);
  return drawn !== undefined && values.sound && vertices.every(({ sound }) => sound)
    ? { ...common, kind: 'stroke', guessed: false, ...drawn }
    : unread;
};

const commonOf = (values: DxfValues): DxfCommon => {
  const colour = values.number(62, 256);
  return {
    layer: unescaped(values.text(8) ?? '0'),
    colour: colour === 256 ? undefined : Math.abs(colour),
    invisible: values.number(60, 0) === 1,
    paper: values.number(67, 0) === 1,
  };
};

interface Drawn {
  readonly stroke: Stroke;
  readonly matrix: Matrix;
  readonly guessed?: boolean;
}

const strokeOf = (values: DxfValues, vertices: readonly DxfValues[]): Drawn | undefined => {
  switch (values.type) {
    case 'LINE':
      return { stroke: lineStroke(values), matrix: unchanged };
    case 'ELLIPSE':
      return { stroke: ellipseStroke(values), matrix: unchanged };
    case 'CIRCLE':
    case 'ARC':
      return inPlane(roundStroke(values), planeOf(values, values.number(30, 0)));
    case 'LWPOLYLINE':
      return inPlane(
        polylineStroke(cornersOf(values), isClosed(values)),
        planeOf(values, values.number(38, 0)),
      );
    case 'POLYLINE':
      return polylinePart(values, vertices);
    case 'SPLINE': {
      const spline = splineStroke(values);
      return spline === undefined ? undefined : { ...spline, matrix: unchanged };
    }
    default:
      return undefined;
  }
};

const inPlane = (stroke: Stroke | undefined, matrix: Matrix): Drawn | undefined =>
  stroke === undefined ? undefined : { stroke, matrix };

const isClosed = (values: DxfValues): boolean => (values.number(70, 0) & 1) === 1;

/** Flags of a polyline: in space rather than in its plane; a mesh of faces. Of a vertex: only pulls at the curve. */
const inSpace = 8;
const mesh = 16 | 64;
const pulls = 16;

const polylinePart = (values: DxfValues, vertices: readonly DxfValues[]): Drawn | undefined => {
  const flags = values.number(70, 0);
  if ((flags & mesh) !== 0) return undefined;
  const corners = vertices
    .filter((vertex) => (vertex.number(70, 0) & pulls) === 0)
    .map((vertex): Corner => ({ at: vertex.point(10), bulge: vertex.number(42, 0) }));
  const matrix = (flags & inSpace) === 0 ? planeOf(values, values.number(30, 0)) : unchanged;
  return inPlane(polylineStroke(corners, isClosed(values)), matrix);
};

const texts: ReadonlySet<string> = new Set(['TEXT', 'MTEXT', 'ATTRIB', 'ATTDEF']);

/** Attributes may be hidden one by one. */
const textPart = (values: DxfValues, common: DxfCommon): DxfPart | undefined => {
  const isAttribute = values.type === 'ATTRIB' || values.type === 'ATTDEF';
  if (isAttribute && (values.number(70, 0) & 1) === 1) return undefined;
  const words = plainWords(values.text(1) ?? values.text(3) ?? '');
  if (words === '') return undefined;
  return { ...common, kind: 'text', words, at: [values.number(10, 0), values.number(20, 0)] };
};

const insertPart = (values: DxfValues, common: DxfCommon): DxfPart => {
  const [x, y] = [values.number(41, 1), values.number(42, 1)];
  const rotation = turn((values.number(50, 0) * Math.PI) / 180);
  const plane = planeOf(values, values.number(30, 0));
  const placed = times(plane, times(shift(values.point(10)), rotation));
  const columns = Math.max(1, Math.trunc(values.number(70, 1)));
  const rows = Math.max(1, Math.trunc(values.number(71, 1)));
  const [a, b, c, d] = times(plane, rotation);
  const [gap, rise] = [values.number(44, 0), values.number(45, 0)];
  if (!values.sound) return { ...common, kind: 'unread', what: 'INSERT' };
  return {
    ...common,
    kind: 'insert',
    block: unescaped(values.text(2) ?? ''),
    matrix: times(placed, stretch(x, y)),
    columns,
    rows,
    across: [a * gap, b * gap],
    up: [c * rise, d * rise],
  };
};
