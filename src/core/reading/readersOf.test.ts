import { describe, expect, it } from 'vitest';
import { sampleEvent } from '../../../test/samples/studies.ts';
import type { ReadingEvent } from './readingEvent.ts';
import { readersOf } from './readersOf.ts';

const at = (hour: number): string => `2031-05-06T0${String(hour)}:00:00.000Z`;

const graded = (id: string, cell: string, hour: number, by?: string): ReadingEvent => ({
  ...sampleEvent(id, { cell }),
  at: at(hour),
  ...(by === undefined ? {} : { by }),
});

describe('who read a card', () => {
  it('is whoever said last what became of a shape, most shapes first', () => {
    const events = [
      graded('e1', 'A1', 1, 'Ada'),
      graded('e2', 'A2', 2, 'Bo'),
      graded('e3', 'A1', 3, 'Bo'),
      graded('e4', 'B1', 4),
    ];
    expect(readersOf(events)).toEqual([
      { by: 'Bo', shapes: 2, lastAt: at(3) },
      { shapes: 1, lastAt: at(4) },
    ]);
  });

  it('is nobody of a shape whose reading was undone or cleared, and the one before where one stood', () => {
    const common = { cardCode: 'K7QX', at: at(5) } as const;
    const events = [
      graded('e1', 'A1', 1, 'Ada'),
      graded('e2', 'A1', 2, 'Bo'),
      graded('e3', 'A2', 2, 'Bo'),
      { ...common, id: 'u1', kind: 'undone', eventId: 'e2', by: 'Cy' } as const,
      { ...common, id: 'c1', kind: 'cleared', cell: 'A2', by: 'Cy' } as const,
    ];
    expect(readersOf(events)).toEqual([{ by: 'Ada', shapes: 1, lastAt: at(1) }]);
    expect(readersOf([])).toEqual([]);
  });
});
