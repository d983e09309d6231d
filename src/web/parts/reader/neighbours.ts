import type { Cell } from '../../../core/card/card.ts';

export type Direction = 'left' | 'right' | 'up' | 'down';

/**
 * The cell that a person expects at an arrow key: the nearest one that way, where a step aside counts double. Rows of a
 * card are shifted like bricks, so there is seldom one straight above. Undefined at the edge.
 */
export const neighbour = (
  cells: readonly Cell[],
  from: Cell,
  direction: Direction,
): Cell | undefined => {
  const ways = cells.flatMap((cell) => {
    const { along, aside } = stepsTo(from, cell, direction);
    return along > 0.5 && aside <= along * 2 ? [{ cell, far: along + 2 * aside }] : [];
  });
  return ways.reduce<(typeof ways)[number] | undefined>(
    (best, way) => (best === undefined || way.far < best.far ? way : best),
    undefined,
  )?.cell;
};

const stepsTo = (from: Cell, to: Cell, direction: Direction) => {
  const [dx, dy] = [to.xMm - from.xMm, to.yMm - from.yMm];
  switch (direction) {
    case 'left':
      return { along: -dx, aside: Math.abs(dy) };
    case 'right':
      return { along: dx, aside: Math.abs(dy) };
    case 'up':
      return { along: dy, aside: Math.abs(dx) };
    case 'down':
      return { along: -dy, aside: Math.abs(dx) };
  }
};

/** Cells as they are read: top row first, from left to right. */
export const inReadingOrder = (cells: readonly Cell[]): readonly Cell[] =>
  [...cells].sort((a, b) => b.yMm - a.yMm || a.xMm - b.xMm);
