import type { Grade } from '../reading/grade.ts';
import type { CellSeen } from './gradeCell.ts';

/** A photographed card as it was read, beside what a person found. */
export interface JudgedCard {
  readonly name: string;
  readonly found: boolean;
  readonly cells: readonly CellSeen[];
  readonly truth: ReadonlyMap<string, Grade>;
}

/** How well photographs were read. Counts; every share is the reader's to take. */
export interface PhotoScore {
  readonly cards: number;
  readonly found: number;
  /** Shapes of the cards that were found. */
  readonly shapes: number;
  readonly cantTell: number;
  /** Of those that got a grade. */
  readonly right: number;
  readonly wrong: number;
  readonly wrongAndSure: number;
  /** Of those that got a grade: out told from in place. */
  readonly holesRight: number;
  readonly lost: readonly string[];
  readonly mistakes: readonly string[];
}

/** A shape of which it is less sure than this is to be looked at. */
export const quiteSure = 0.9;

export const photoScore = (judged: readonly JudgedCard[]): PhotoScore => {
  const found = judged.filter((card) => card.found);
  const shapes = found.flatMap(({ name, cells, truth }) =>
    cells.flatMap(({ cell, grade, sure }) => {
      const was = truth.get(cell);
      return was === undefined ? [] : [{ said: `${name} ${cell}`, was, grade, sure }];
    }),
  );
  const told = shapes.filter(({ grade }) => grade !== 'cant-tell');
  const wrong = told.filter(({ was, grade }) => was !== grade);
  return {
    cards: judged.length,
    found: found.length,
    shapes: shapes.length,
    cantTell: shapes.length - told.length,
    right: told.length - wrong.length,
    wrong: wrong.length,
    wrongAndSure: wrong.filter(({ sure }) => sure >= quiteSure).length,
    holesRight: told.filter(({ was, grade }) => (was === 'out') === (grade === 'out')).length,
    lost: judged.flatMap((card) => (card.found ? [] : [card.name])),
    mistakes: wrong.map(
      ({ said, was, grade, sure }) => `${said}: ${was}, read ${grade} (${sure.toFixed(2)})`,
    ),
  };
};
