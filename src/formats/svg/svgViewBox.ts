import { shift, stretch, times, type Matrix } from '../../core/path/matrix.ts';
import { isAbsolute, pxMm, svgLengthMm } from './svgLength.ts';

type Attributes = Readonly<Record<string, string>>;

/** A part of the drawing's own plane, in user units. */
export interface ViewBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** No value of these attributes is longer. */
const mostSigns = 200;

export const viewBoxOf = (attributes: Attributes): ViewBox | undefined => {
  const parts = (attributes['viewBox'] ?? '')
    .slice(0, mostSigns)
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [left, top, width, height] = parts;
  if (left === undefined || top === undefined || width === undefined || height === undefined)
    return undefined;
  return parts.length === 4 && parts.every(Number.isFinite) && width > 0 && height > 0
    ? { left, top, width, height }
    : undefined;
};

/** Fits a viewBox into a frame as `preserveAspectRatio` says (SVG 2, 8.2): from the box's units to the frame's. */
export const fitted = (
  box: ViewBox,
  frame: { readonly width: number; readonly height: number },
  preserveAspectRatio: string | undefined,
): Matrix => {
  const how = (preserveAspectRatio ?? '').slice(0, mostSigns);
  const [, x = 'Mid', y = 'Mid', cut = 'meet'] =
    /^\s*x(Min|Mid|Max)Y(Min|Mid|Max)(?:\s+(meet|slice))?\s*$/.exec(how) ?? [];
  const [across, down] = [frame.width / box.width, frame.height / box.height];
  if (/^\s*none\b/.test(how)) return times(stretch(across, down), shift([-box.left, -box.top]));
  const scale = cut === 'slice' ? Math.max(across, down) : Math.min(across, down);
  const rest = shift([
    (shares[x] ?? 0.5) * (frame.width - box.width * scale),
    (shares[y] ?? 0.5) * (frame.height - box.height * scale),
  ]);
  return times(rest, times(stretch(scale, scale), shift([-box.left, -box.top])));
};

const shares: Readonly<Record<string, number>> = { Min: 0, Mid: 0.5, Max: 1 };

export interface SvgPage {
  readonly widthMm: number;
  readonly heightMm: number;
  /** From user units to mm, y turned upwards. */
  readonly matrix: Matrix;
  /** What percentages of the outermost parts are of, in user units. */
  readonly view: { readonly width: number; readonly height: number };
  /** The file does not say how long a unit is: 96 to the inch is taken. */
  readonly assumed: boolean;
}

/** The page of an SVG: its size, and what a user unit is in mm. A side that is not said follows the viewBox. */
export const pageOf = (attributes: Attributes): SvgPage => {
  const box = viewBoxOf(attributes);
  const said = {
    width: svgLengthMm(attributes['width']),
    height: svgLengthMm(attributes['height']),
  };
  const assumed = !isAbsolute(attributes['width']) && !isAbsolute(attributes['height']);
  const scale = perUnit(box, said);
  const widthMm = said.width ?? (box?.width ?? 0) * scale;
  const heightMm = said.height ?? (box?.height ?? 0) * scale;
  const upwards: Matrix = [1, 0, 0, -1, 0, heightMm];
  const within =
    box === undefined
      ? stretch(pxMm, pxMm)
      : fitted(box, { width: widthMm, height: heightMm }, attributes['preserveAspectRatio']);
  return {
    widthMm,
    heightMm,
    matrix: times(upwards, within),
    view: box ?? { width: widthMm / pxMm, height: heightMm / pxMm },
    assumed,
  };
};

const perUnit = (
  box: ViewBox | undefined,
  said: { readonly width: number | undefined; readonly height: number | undefined },
): number => {
  if (box === undefined) return pxMm;
  if (said.width !== undefined) return said.width / box.width;
  return said.height === undefined ? pxMm : said.height / box.height;
};
