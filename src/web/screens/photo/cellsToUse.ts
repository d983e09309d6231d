import type { CellSeen } from '../../../core/photo/gradeCell.ts';
import { quiteSure } from '../../../core/photo/photoScore.ts';
import type { Grade } from '../../../core/reading/grade.ts';
import { nextGrade, type GradeRead } from '../../parts/reader/useReading.ts';

/** One shape as it would be used: as the photograph was read, or as a person corrected that. */
export interface CellToUse {
  readonly cell: string;
  /** Absent: the photograph can't tell, and nobody has said. */
  readonly grade: Grade | undefined;
  readonly sure: number;
  readonly isCorrected: boolean;
}

/** What a person said of shapes, by their names. */
export type Corrections = ReadonlyMap<string, Grade>;

/** A correction that says what the photograph says is none. */
export const cellsToUse = (
  seen: readonly CellSeen[],
  corrections: Corrections,
): readonly CellToUse[] =>
  seen.map(({ cell, grade: read, sure }) => {
    const said = corrections.get(cell);
    const grade = said ?? (read === 'cant-tell' ? undefined : read);
    return { cell, grade, sure, isCorrected: said !== undefined && said !== read };
  });

/** A tap steps on, as on a card that is read by hand: out, hangs, not through. */
export const corrected = (
  cells: readonly CellToUse[],
  corrections: Corrections,
  cell: string,
): Corrections => {
  const grade = cells.find((one) => one.cell === cell)?.grade;
  return new Map([...corrections, [cell, grade === undefined ? 'out' : nextGrade[grade]]]);
};

/** A person should look at it by hand, and has not said anything of it yet. */
export const needsLook = ({ grade, sure, isCorrected }: CellToUse): boolean =>
  grade === undefined || (!isCorrected && sure < quiteSure);

/** What is said of the card when these are used; shapes that nobody can tell stay unread. */
export const gradesToSay = (cells: readonly CellToUse[]): readonly GradeRead[] =>
  cells.flatMap(({ cell, grade, isCorrected }): readonly GradeRead[] =>
    grade === undefined ? [] : [{ cell, grade, source: isCorrected ? 'photo-corrected' : 'photo' }],
  );
