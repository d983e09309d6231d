import type { Toolpath } from '../../core/filecheck/toolpath.ts';
import { grownDrawing, type GrownDrawing } from '../../core/kerf/grownDrawing.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { linesInParts } from '../../core/proof/linesInParts.ts';
import { readToolpath } from '../../formats/readToolpath.ts';

/** What stands in the drawing, and the width that the beam removes. */
export interface DrawingToGrow {
  readonly text: string;
  readonly kerfMm: number;
}

export interface DrawingGrown extends GrownDrawing {
  readonly kind: Toolpath['kind'];
}

/** Curves are flattened this finely, mm: a tenth of what a caliper shows, since parts are to fit. */
const toleranceMm = 0.002;

/**
 * The user's own drawing with its lines moved off its parts by half the kerf. Refuses what the readers refuse;
 * `grow-not-a-drawing` for a program, whose lines say where the beam goes and not what is wanted; `proof-nothing-to-cut`.
 */
export const growDrawing = ({ text, kerfMm }: DrawingToGrow): Outcome<DrawingGrown> => {
  const read = readToolpath(text, { toleranceMm });
  if (!read.ok) return read;
  const { kind, page } = read.value;
  if (kind === 'gcode') return refused('grow-not-a-drawing');
  const found = linesInParts(read.value.lines);
  if (!found.ok) return found;
  return done({
    kind,
    ...grownDrawing(found.value, {
      byMm: kerfMm / 2,
      ...(page === undefined ? {} : { page }),
    }),
  });
};
