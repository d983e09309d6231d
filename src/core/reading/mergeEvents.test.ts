import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aCard } from '../../../test/builders.ts';
import type { Grade } from './grade.ts';
import { mergeEvents } from './mergeEvents.ts';
import { readCard } from './readCard.ts';
import type { ReadingEvent } from './readingEvent.ts';
import { undoable } from './undoable.ts';

const time = (minute: number): string => new Date(Date.UTC(2025, 2, 1, 10, minute)).toISOString();
const graded = (id: string, minute: number, grade: Grade = 'out'): ReadingEvent => ({
  id,
  cardCode: 'K7QX',
  at: time(minute),
  kind: 'graded',
  cell: 'A1',
  grade,
});
const undone = (id: string, minute: number, eventId: string): ReadingEvent => ({
  id,
  cardCode: 'K7QX',
  at: time(minute),
  kind: 'undone',
  eventId,
});
const ids = (events: readonly ReadingEvent[]): string => events.map(({ id }) => id).join(' ');
const saidOfA1 = (events: readonly ReadingEvent[]) =>
  readCard(aCard(), events).cells.find(({ id }) => id === 'A1')?.reading;

describe('putting two copies of a study’s readings together', () => {
  it('lets the later word stand, whichever copy it was said in', () => {
    const [early, late] = [graded('m', 5, 'hangs'), graded('a', 30, 'out')];
    for (const merged of [mergeEvents([late], [early]), mergeEvents([early], [late])]) {
      expect(ids(merged)).toBe('m a');
      expect(saidOfA1(merged)).toEqual({ kind: 'graded', grade: 'out' });
    }
  });

  it('takes back what an undo of either copy takes back, and lets the rest stand', () => {
    const here = [graded('a', 0, 'out'), undone('u', 9, 'a')];
    const coming = [graded('a', 0, 'out'), graded('b', 4, 'stays')];
    const merged = mergeEvents(here, coming);
    expect(ids(merged)).toBe('a b u');
    expect(saidOfA1(merged)).toEqual({ kind: 'graded', grade: 'stays' });
    expect(undoable(merged)?.id).toBe('b');
  });

  it('keeps the order of each copy though a clock went wrong', () => {
    const here = [graded('a', 50), graded('b', 10), graded('c', 60)];
    const coming = [graded('x', 55), graded('y', 5)];
    expect(ids(mergeEvents(here, coming))).toBe('a b x y c');
  });

  it('puts what the other copy said between two that both have between these', () => {
    const both = [graded('a', 0), graded('d', 30)];
    const coming = [graded('a', 0), graded('b', 59), graded('d', 30), graded('e', 31)];
    expect(ids(mergeEvents(both, coming))).toBe('a b d e');
  });

  it('lets this copy stand where the two contradict each other', () => {
    const [a, b] = [graded('a', 0, 'out'), graded('b', 0, 'hangs')];
    expect(ids(mergeEvents([a, b], [b, a]))).toBe('a b');
    expect(mergeEvents([a], [graded('a', 0, 'stays')])).toEqual([a]);
  });
});

/** A history that forked: a common beginning, and what each copy heard since, clocks good or bad. */
const forked = fc
  .record({
    common: fc.array(fc.nat(59), { maxLength: 6 }),
    one: fc.array(fc.nat(59), { maxLength: 8 }),
    other: fc.array(fc.nat(59), { maxLength: 8 }),
  })
  .map(({ common, one, other }) => {
    const events = (name: string, minutes: readonly number[]) =>
      minutes.map((minute, i) => graded(`${name}${String(i)}`, minute));
    const start = events('c', common);
    return {
      one: [...start, ...events('p', one)],
      other: [...start, ...events('q', other)],
    };
  });

describe('any two copies', () => {
  it('give the same whichever is brought into which, and nothing new the second time', () => {
    fc.assert(
      fc.property(forked, ({ one, other }) => {
        const merged = mergeEvents(one, other);
        expect(mergeEvents(other, one)).toEqual(merged);
        expect(mergeEvents(merged, other)).toEqual(merged);
        expect(mergeEvents(merged, one)).toEqual(merged);
        expect(mergeEvents(other, merged)).toEqual(merged);
      }),
    );
  });

  it('lose nothing, and keep the order of each', () => {
    fc.assert(
      fc.property(forked, ({ one, other }) => {
        const merged = mergeEvents(one, other);
        for (const copy of [one, other]) {
          const own = new Set(copy.map(({ id }) => id));
          expect(merged.filter(({ id }) => own.has(id))).toEqual(copy);
        }
        expect(merged).toHaveLength(new Set([...one, ...other].map(({ id }) => id)).size);
      }),
    );
  });

  it('stand in the order of time where each did', () => {
    const byTime = (events: readonly ReadingEvent[]) =>
      [...events].sort((a, b) => (a.at + a.id < b.at + b.id ? -1 : 1));
    fc.assert(
      fc.property(forked, ({ one, other }) => {
        const merged = mergeEvents(byTime(one), byTime(other));
        expect(merged).toEqual(byTime(merged));
      }),
    );
  });

  it('end, even where both have the same events in any order', () => {
    const events = [0, 1, 2, 3, 4].map((n) => graded(`e${String(n)}`, n));
    const some = fc.shuffledSubarray(events);
    fc.assert(
      fc.property(some, some, (one, other) => {
        const merged = mergeEvents(one, other);
        expect(merged.filter((event) => one.includes(event))).toEqual(one);
        expect(new Set(merged)).toEqual(new Set([...one, ...other]));
      }),
    );
  });
});
