import type { CardDrawing, DrawnLayer } from '../../core/card/cardDrawing.ts';
import type { DrawnPart } from '../../core/card/cardParts.ts';
import { isClosed, type Polyline } from '../../core/path/polyline.ts';

/** Micrometres are more than any laser can draw. */
const mm = (value: number): string => String(Number(value.toFixed(3)));

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/**
 * A drawing as SVG in mm, y downwards as SVG has it: one group a layer in the order of cutting, whose title spells the
 * setting and whose id is the same with `_` for spaces. Lines only, no text, no fill, no transform, one colour a setting,
 * so that every control program sees the same. `notes` (cautions, say) stand in the description, which nothing draws.
 * O(points).
 */
export const writeSvg = (
  drawing: CardDrawing,
  title: string,
  notes: readonly string[] = [],
): string => {
  const id = idsAfter(drawing.layers.map(({ name }) => idOfLayer(name)));
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${mm(drawing.widthMm)}mm" height="${mm(drawing.heightMm)}mm" viewBox="0 0 ${mm(drawing.widthMm)} ${mm(drawing.heightMm)}">`,
    `<title>${escaped(title)}</title>`,
    ...(notes.length === 0 ? [] : [`<desc>${escaped(notes.join(' '))}</desc>`]),
    ...drawing.layers.flatMap((layer) => group(layer, drawing.heightMm, id)),
    '</svg>',
    '',
  ].join('\n');
};

const group = (
  layer: DrawnLayer,
  heightMm: number,
  id: (part: DrawnPart) => string,
): readonly string[] => [
  `<g id="${idOfLayer(layer.name)}" fill="none" stroke="${layer.colour}" stroke-width="0.1">`,
  `<title>${escaped(layer.name)}</title>`,
  ...layer.parts.map(
    (part) =>
      `<path id="${id(part)}" d="${part.polylines.map((line) => pathData(line, heightMm)).join('')}"/>`,
  ),
  '</g>',
];

const idOfLayer = (name: string): string => name.replaceAll(' ', '_');

/** Every id stands once, as XML asks: the second `hint` of a drawing is `hint-2`. */
const idsAfter = (taken: readonly string[]): ((part: DrawnPart) => string) => {
  const given = new Map(taken.map((name) => [name, 1]));
  return (part) => {
    const name = partId(part);
    const count = (given.get(name) ?? 0) + 1;
    given.set(name, count);
    return count === 1 ? name : `${name}-${String(count)}`;
  };
};

/** `cell-B2`, `words-B2`, `code`: what the check of a file names. */
const partId = ({ of }: DrawnPart): string => ('cell' in of ? `${of.what}-${of.cell}` : of.what);

const pathData = (line: Polyline, heightMm: number): string => {
  const loops = isClosed(line);
  const points = (loops ? line.slice(0, -1) : line).map(([x, y]) => `${mm(x)} ${mm(heightMm - y)}`);
  return `M${points.join('L')}${loops ? 'Z' : ''}`;
};
