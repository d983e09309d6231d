type Attributes = Readonly<Record<string, string>>;

const number = (attributes: Attributes, name: string): number => {
  const value = Number.parseFloat(attributes[name] ?? '0');
  return Number.isFinite(value) ? value : 0;
};

/** What an element draws, as path data; undefined for an element that draws nothing. */
export const pathDataOf = (name: string, attributes: Attributes): string | undefined => {
  const of = (key: string): number => number(attributes, key);
  switch (name) {
    case 'path':
      return attributes['d'] ?? '';
    case 'line':
      return `M${of('x1')} ${of('y1')}L${of('x2')} ${of('y2')}`;
    case 'polyline':
      return pointsPath(attributes['points'] ?? '');
    case 'polygon':
      return `${pointsPath(attributes['points'] ?? '')}Z`;
    case 'rect':
      return rectPath(of('x'), of('y'), of('width'), of('height'), of('rx'), of('ry'));
    case 'circle':
      return ellipsePath(of('cx'), of('cy'), of('r'), of('r'));
    case 'ellipse':
      return ellipsePath(of('cx'), of('cy'), of('rx'), of('ry'));
    default:
      return undefined;
  }
};

const pointsPath = (points: string): string => {
  const figures = points.trim();
  return figures === '' ? '' : `M${figures}`;
};

const rectPath = (x: number, y: number, w: number, h: number, rx: number, ry: number): string => {
  const a = Math.min(rx === 0 ? ry : rx, w / 2);
  const b = Math.min(ry === 0 ? rx : ry, h / 2);
  if (a <= 0 || b <= 0) return `M${x} ${y}h${w}v${h}h${-w}Z`;
  const corner = (dx: number, dy: number): string => `a${a} ${b} 0 0 1 ${dx} ${dy}`;
  return [
    `M${x + a} ${y}h${w - 2 * a}${corner(a, b)}`,
    `v${h - 2 * b}${corner(-a, b)}`,
    `h${2 * a - w}${corner(-a, -b)}`,
    `v${2 * b - h}${corner(a, -b)}Z`,
  ].join('');
};

const ellipsePath = (cx: number, cy: number, rx: number, ry: number): string =>
  rx <= 0 || ry <= 0
    ? ''
    : `M${cx - rx} ${cy}a${rx} ${ry} 0 1 0 ${2 * rx} 0a${rx} ${ry} 0 1 0 ${-2 * rx} 0Z`;
