import { lengthMm } from '../../core/path/polyline.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { nestSketch } from '../../core/proof/nestSketch.ts';
import { partsOf } from '../../core/proof/partsOf.ts';
import type { NestSketch } from '../../core/study/startedOrder.ts';
import { readToolpath } from '../../formats/readToolpath.ts';

/** What an order needs to know of the drawing of one sheet. */
export interface NestRead {
  readonly nest: NestSketch;
  /** Length of cut of its longest part. */
  readonly partLengthMm: number;
}

/** A picture to tap on; more parts than this are counted, not tapped. */
const mostParts = 400;

/** Reads the drawing of one sheet of an order: SVG, DXF or G-code. Refuses what the readers do; `proof-nothing-to-cut`. */
export const nestFromDrawing = (text: string): Outcome<NestRead> => {
  const read = readToolpath(text);
  if (!read.ok) return read;
  const lines = read.value.lines
    .map(({ points }) => points)
    .filter((points) => points.length > 1 && lengthMm(points) > 0);
  const drawing = partsOf(lines);
  const nest = nestSketch(drawing);
  if (nest === undefined || nest.parts.length > mostParts) return refused('proof-nothing-to-cut');
  const longest = Math.max(...drawing.parts.map(({ cutMm }) => cutMm));
  return done({ nest, partLengthMm: Math.round(longest) });
};
