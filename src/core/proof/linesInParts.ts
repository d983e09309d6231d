import { drawnLines } from '../filecheck/drawnLines.ts';
import type { PathLine } from '../filecheck/toolpath.ts';
import { done, refused, type Outcome } from '../problem.ts';
import { partsOf, type DrawingInParts } from './partsOf.ts';

/** The lines of a drawing that are cut, and the pieces that they give: `inParts` counts within `lines`. */
export interface LinesInParts {
  readonly lines: readonly PathLine[];
  readonly inParts: DrawingInParts;
}

/** A drawing as the pieces that it is to give, each line beside its layer and colour. Refuses `proof-nothing-to-cut`. */
export const linesInParts = (all: readonly PathLine[]): Outcome<LinesInParts> => {
  const lines = drawnLines(all).filter(({ points }) => points.length > 1);
  const inParts = partsOf(lines.map(({ points }) => points));
  return inParts.parts.length === 0 ? refused('proof-nothing-to-cut') : done({ lines, inParts });
};
