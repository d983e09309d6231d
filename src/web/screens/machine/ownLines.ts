import { ownLineProblem } from '../../../core/dialect/ownLines.ts';
import { done, refused, type Outcome } from '../../../core/problem.ts';
import { gcodeDialectShape } from '../../../formats/saved/gcodeDialect.ts';

/** Reads a user's own lines of G-code, one command a line. Empty lines are passed over. */
export const readOwnLines = (text: string): Outcome<readonly string[]> => {
  const lines = text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
  const { opening } = gcodeDialectShape.shape;
  const refusedLine = lines.find((line) => !opening.safeParse([line]).success);
  if (refusedLine !== undefined) return refused('line-not-own-gcode', { text: refusedLine });
  const problem = lines.map(ownLineProblem).find((each) => each !== undefined);
  if (problem !== undefined) return { ok: false, problem };
  return opening.safeParse(lines).success
    ? done(lines)
    : refused('own-gcode-too-long', { count: lines.length });
};
