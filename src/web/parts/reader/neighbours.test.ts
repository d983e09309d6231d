import { describe, expect, it } from 'vitest';
import type { Cell } from '../../../core/card/card.ts';
import { inReadingOrder, neighbour } from './neighbours.ts';

const cell = (id: string, xMm: number, yMm: number): Cell => ({ id, rung: 'A', xMm, yMm });

/** Two rows like bricks:  A1  A2  A3  above  A4  A5 . */
const cells = [
  cell('A1', 10, 40),
  cell('A2', 30, 40),
  cell('A3', 50, 40),
  cell('A4', 20, 15),
  cell('A5', 40, 15),
];
const at = (id: string): Cell => {
  const found = cells.find((each) => each.id === id);
  if (found === undefined) throw new Error(id);
  return found;
};

describe('arrow keys on a card', () => {
  it('move along the row and over to the shifted row', () => {
    expect(neighbour(cells, at('A1'), 'right')?.id).toBe('A2');
    expect(neighbour(cells, at('A3'), 'left')?.id).toBe('A2');
    expect(neighbour(cells, at('A1'), 'down')?.id).toBe('A4');
    expect(neighbour(cells, at('A5'), 'up')?.id).toMatch(/A2|A3/);
  });

  it('stop at the edge', () => {
    expect(neighbour(cells, at('A1'), 'up')).toBeUndefined();
    expect(neighbour(cells, at('A1'), 'left')).toBeUndefined();
  });

  it('reach every cell from every other', () => {
    for (const start of cells) {
      const reached = new Set([start]);
      for (const from of reached)
        for (const direction of ['left', 'right', 'up', 'down'] as const) {
          const next = neighbour(cells, from, direction);
          if (next !== undefined) reached.add(next);
        }
      expect(reached.size).toBe(cells.length);
    }
  });

  it('follow the order in which a page is read', () => {
    expect(inReadingOrder([...cells].reverse()).map(({ id }) => id)).toEqual([
      'A1',
      'A2',
      'A3',
      'A4',
      'A5',
    ]);
  });
});
