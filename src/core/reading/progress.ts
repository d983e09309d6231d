import type { CellAsRead } from './readingEvent.ts';

/** How far the reading of a card has come, and what fell out so far. */
export interface Progress {
  readonly cells: number;
  readonly read: number;
  readonly unread: number;
  readonly out: number;
  readonly hangs: number;
  readonly stays: number;
  readonly spoilt: number;
  /** Cells whose setting was corrected to what was really cut. */
  readonly corrected: number;
}

export const progress = (cells: readonly CellAsRead[]): Progress => {
  const graded = { out: 0, hangs: 0, stays: 0 };
  let spoilt = 0;
  for (const { reading } of cells) {
    if (reading.kind === 'graded') graded[reading.grade] += 1;
    if (reading.kind === 'spoilt') spoilt += 1;
  }
  const read = graded.out + graded.hangs + graded.stays + spoilt;
  return {
    cells: cells.length,
    read,
    unread: cells.length - read,
    ...graded,
    spoilt,
    corrected: cells.filter(({ corrected }) => corrected).length,
  };
};
