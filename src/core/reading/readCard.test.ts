import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aCard } from '../../../test/builders.ts';
import { progress } from './progress.ts';
import { readCard } from './readCard.ts';
import type { Grade } from './grade.ts';
import type { CellAsRead, ReadingEvent } from './readingEvent.ts';
import { redoable, undoable } from './undoable.ts';

const card = aCard();
const at = '2025-03-01T10:00:00.000Z';
const base = (id: string) => ({ id, cardCode: card.code, at });
const graded = (id: string, cell: string, grade: Grade): ReadingEvent => ({
  ...base(id),
  kind: 'graded',
  cell,
  grade,
});
const undone = (id: string, eventId: string): ReadingEvent => ({
  ...base(id),
  kind: 'undone',
  eventId,
});
const read = (events: readonly ReadingEvent[]) => readCard(card, events).cells;
const cellOf = (cells: readonly CellAsRead[], id: string) => cells.find((cell) => cell.id === id);

const anyEvents = fc
  .array(
    fc.record({
      kind: fc.constantFrom('graded', 'spoilt', 'cleared', 'as-cut', 'undone', 'edge'),
      cell: fc.constantFrom('A1', 'B1', 'B2', 'Z9'),
      grade: fc.constantFrom<Grade>('out', 'hangs', 'stays'),
      target: fc.nat({ max: 30 }),
    }),
    { maxLength: 25 },
  )
  .map((drawn) =>
    drawn.map(({ kind, cell, grade, target }, index): ReadingEvent => {
      const head = base(`e${String(index)}`);
      switch (kind) {
        case 'graded':
          return { ...head, kind, cell, grade };
        case 'spoilt':
          return { ...head, kind, cell, reason: 'knot' };
        case 'as-cut':
          return { ...head, kind, cell, setting: { powerPct: 31, speedMmPerS: 14, passes: 1 } };
        case 'edge':
          return { ...head, kind, cell, edge: target % 3 === 0 ? null : 'brown' };
        case 'undone':
          return { ...head, kind, eventId: `e${String(target)}` };
        default:
          return { ...head, kind: 'cleared', cell };
      }
    }),
  );

describe('the edge of a shape', () => {
  const edge = (id: string, said: 'clean' | 'brown' | null): ReadingEvent => ({
    ...base(id),
    ...{ kind: 'edge', cell: 'A1', edge: said },
  });
  const edgeOf = (events: readonly ReadingEvent[]) => {
    const reading = cellOf(read(events), 'A1')?.reading;
    return reading?.kind === 'graded' ? reading.edge?.edge : undefined;
  };

  it('is the last that was said, taken back by an undo or by saying none', () => {
    const said = [graded('1', 'A1', 'out'), edge('2', 'clean'), edge('3', 'brown')];
    expect(edgeOf(said)).toBe('brown');
    expect(edgeOf([...said, undone('4', '3')])).toBe('clean');
    expect(undoable(said)?.id).toBe('3');
    expect(edgeOf([...said, edge('4', null)])).toBeUndefined();
  });

  it('is only one of a shape that came out, and stays while it is graded again', () => {
    const said = [edge('1', 'clean'), graded('2', 'A1', 'hangs')];
    expect(edgeOf(said)).toBeUndefined();
    expect(edgeOf([...said, graded('3', 'A1', 'out')])).toBe('clean');
    const cleared: ReadingEvent = { ...base('4'), kind: 'cleared', cell: 'A1' };
    expect(edgeOf([...said, cleared, graded('5', 'A1', 'out')])).toBeUndefined();
  });
});

describe('reading a card', () => {
  it('leaves every cell unread at the setting of its rung when nothing was said', () => {
    const cells = read([]);
    expect(cells.map(({ id }) => id)).toEqual(['A1', 'A2', 'B1', 'B2', 'C1', 'C2']);
    expect(cells.every(({ reading, corrected }) => reading.kind === 'unread' && !corrected)).toBe(
      true,
    );
    expect(cellOf(cells, 'C2')?.setting).toEqual({
      powerPct: 30,
      speedMmPerS: 18,
      passes: 1,
      air: { kPa: 100 },
    });
  });

  it('lets the later of two grades win and clears on request', () => {
    const twice = [graded('1', 'B1', 'out'), graded('2', 'B1', 'hangs')];
    expect(cellOf(read(twice), 'B1')?.reading).toEqual({ kind: 'graded', grade: 'hangs' });
    const cleared: ReadingEvent = { ...base('3'), kind: 'cleared', cell: 'B1' };
    expect(cellOf(read([...twice, cleared]), 'B1')?.reading).toEqual({ kind: 'unread' });
  });

  it('takes back, and takes back the taking back', () => {
    const events = [graded('1', 'B1', 'out'), graded('2', 'B1', 'stays'), undone('3', '2')];
    expect(cellOf(read(events), 'B1')?.reading).toEqual({ kind: 'graded', grade: 'out' });
    const redone = [...events, undone('4', '3')];
    expect(cellOf(read(redone), 'B1')?.reading).toEqual({ kind: 'graded', grade: 'stays' });
    expect(cellOf(read([...redone, undone('5', '4')]), 'B1')?.reading).toEqual({
      kind: 'graded',
      grade: 'out',
    });
  });

  it('keeps the grade when the setting is corrected, and the correction when the grade changes', () => {
    const asCut: ReadingEvent = {
      ...base('2'),
      kind: 'as-cut',
      cell: 'B1',
      setting: { powerPct: 30, speedMmPerS: 16, passes: 1 },
    };
    const cell = cellOf(read([graded('1', 'B1', 'out'), asCut, graded('3', 'B1', 'hangs')]), 'B1');
    expect(cell).toMatchObject({
      corrected: true,
      setting: { speedMmPerS: 16 },
      reading: { grade: 'hangs' },
    });
    const putBack = { ...asCut, id: '4', setting: { powerPct: 30, speedMmPerS: 15, passes: 1 } };
    expect(cellOf(read([asCut, putBack]), 'B1')?.corrected).toBe(false);
  });

  it('passes over other cards and reports cells and steps that it does not know', () => {
    const events = [
      graded('1', 'Z9', 'out'),
      { ...graded('2', 'B1', 'out'), cardCode: 'ZZZZ' },
      undone('3', 'never'),
      undone('3', 'never'),
    ];
    const { cells, leftOut } = readCard(card, events);
    expect(cells.every(({ reading }) => reading.kind === 'unread')).toBe(true);
    expect(leftOut).toEqual([
      { code: 'event-for-unknown-cell', params: { card: 'K7QX', cell: 'Z9' } },
      { code: 'undo-of-unknown-event', params: { card: 'K7QX', event: 'never' } },
    ]);
  });

  it('does not hang on undos that undo each other', () => {
    expect(read([graded('1', 'B1', 'out'), undone('2', '3'), undone('3', '2')])).toHaveLength(6);
  });

  it('says the same when every event arrives twice', () => {
    fc.assert(
      fc.property(anyEvents, (events) => {
        expect(readCard(card, [...events, ...events])).toEqual(readCard(card, events));
      }),
    );
  });

  it('stands after an undo as if the event had never been', () => {
    fc.assert(
      fc.property(anyEvents, (events) => {
        const last = undoable(events);
        if (last === undefined) return;
        const without = events.filter(({ id }) => id !== last.id);
        const taken = [...events, undone('u', last.id)];
        expect(read(taken)).toEqual(read(without));
        expect(redoable(taken)?.id).toBe('u');
        expect(read([...taken, undone('r', 'u')])).toEqual(read(events));
      }),
    );
  });

  it('agrees with undoing step by step, forwards', () => {
    // A slow second opinion: an undo stands unless a later one takes it back; walk backwards once.
    const walkedBack = (events: readonly ReadingEvent[]) => {
      const gone = new Set<string>();
      return [...events].reverse().filter((event) => {
        if (gone.has(event.id)) return false;
        if (event.kind === 'undone') gone.add(event.eventId);
        return event.kind !== 'undone';
      });
    };
    fc.assert(
      fc.property(anyEvents, (drawn) => {
        const events = drawn.filter(
          (event, at) => event.kind !== 'undone' || Number(event.eventId.slice(1)) < at,
        );
        expect(read(events)).toEqual(read(walkedBack(events).reverse()));
      }),
    );
  });
});

describe('undo and redo', () => {
  it('has nothing to take back on an untouched card', () => {
    expect(undoable([])).toBeUndefined();
    expect(redoable([])).toBeUndefined();
  });

  it('walks back over several taps and forward again, until something new is said', () => {
    const taps = [graded('1', 'A1', 'out'), graded('2', 'A2', 'out')];
    const back = [...taps, undone('3', '2'), undone('4', '1')];
    expect(undoable(back)).toBeUndefined();
    expect(redoable(back)?.id).toBe('4');
    const forward = [...back, undone('5', '4')];
    expect(undoable(forward)?.id).toBe('1');
    expect(redoable(forward)?.id).toBe('3');
    expect(redoable([...forward, graded('6', 'B1', 'out')])).toBeUndefined();
  });
});

describe('progress', () => {
  it('counts what was read', () => {
    const spoilt: ReadingEvent = {
      ...base('4'),
      kind: 'spoilt',
      cell: 'C1',
      reason: 'glue-pocket',
    };
    const events = [
      graded('1', 'A1', 'out'),
      graded('2', 'B1', 'hangs'),
      graded('3', 'B2', 'stays'),
      spoilt,
    ];
    expect(progress(read(events))).toEqual({
      cells: 6,
      read: 4,
      unread: 2,
      out: 1,
      hangs: 1,
      stays: 1,
      spoilt: 1,
      corrected: 0,
    });
  });
});
