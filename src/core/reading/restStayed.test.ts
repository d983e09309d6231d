import { describe, expect, it } from 'vitest';
import { aCard } from '../../../test/builders.ts';
import { progress } from './progress.ts';
import { readCard } from './readCard.ts';
import type { ReadingEvent } from './readingEvent.ts';
import { restStayed } from './restStayed.ts';

const at = '2025-03-01T10:00:00.000Z';
const graded = (cardCode: string, cell: string): ReadingEvent => ({
  ...{ id: `${cardCode}-${cell}`, cardCode, at },
  ...{ kind: 'graded', cell, grade: 'out' },
});
let last = 0;
const newId = (): string => `rest-${String((last += 1))}`;

describe('the rest of a card that was read in part', () => {
  it('is not through, and a card that nobody looked at stays unread', () => {
    const [read, unread] = [aCard(), aCard({ code: 'Z9ZZ' })];
    const events = [graded('K7QX', 'A1'), graded('K7QX', 'A2')];
    const all = [...events, ...restStayed({ cards: [read, unread], events }, { newId, at })];
    expect(progress(readCard(read, all).cells)).toMatchObject({ out: 2, stays: 4, unread: 0 });
    expect(progress(readCard(unread, all).cells)).toMatchObject({ read: 0 });
  });
});
