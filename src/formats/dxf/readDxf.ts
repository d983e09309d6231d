import { fault, remark, type Toolpath } from '../../core/filecheck/toolpath.ts';
import { done, type Outcome } from '../../core/problem.ts';
import type { ReadingOptions } from '../reading.ts';
import { DxfDrawing } from './dxfDrawing.ts';
import { readDxfFile } from './dxfFile.ts';
import { dxfUnitMm } from './dxfUnits.ts';

/**
 * A drawing in DXF as lines in mm, in the order of the file: lines, arcs, ellipses, polylines with bulges, splines with
 * weights, and blocks where they are inserted. What is frozen, off or on the paper is left out and told of, as are texts
 * and what else is no line. Refuses what is no DXF, blocks within themselves, endless copies and absurd numbers.
 * O(signs + points).
 */
export const readDxf = (text: string, options: ReadingOptions = {}): Outcome<Toolpath> => {
  const read = readDxfFile(text);
  if (!read.ok) return read;
  const file = read.value;
  const unitMm = dxfUnitMm[file.units ?? 0];
  // Only which of two systems the drawing was begun in, so that it stays an assumption.
  const assumedMm = file.measurement === 'inches' ? 25.4 : 1;
  const drawing = new DxfDrawing(file, unitMm ?? assumedMm, options);
  drawing.finish();
  if (drawing.problem !== undefined) return drawing.problem;
  const { guessed, paper } = drawing;
  return done({
    kind: 'dxf',
    lines: drawing.lines,
    travels: [],
    noticed: [
      ...(unitMm === undefined ? [remark('check-units-assumed')] : []),
      ...drawing.noticed.findings(),
      ...(guessed === 0 ? [] : [fault('check-curve-guessed', { count: guessed })]),
      ...(paper === 0 ? [] : [remark('check-paper-left-out', { count: paper })]),
    ],
  });
};
