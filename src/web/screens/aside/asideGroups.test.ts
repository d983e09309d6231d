import { describe, expect, it } from 'vitest';
import type { ReadingEvent } from '../../../core/reading/readingEvent.ts';
import type { PutAside } from '../../state/outbox.ts';
import { asideGroups, ofCard } from './asideGroups.ts';

const why = { kind: 'refused', status: 404, message: 'No such card.', remedy: 'Look.' } as const;
const event = (id: string, cardCode: string): ReadingEvent => ({
  id,
  cardCode,
  at: '2031-04-05T06:07:08.000Z',
  kind: 'graded',
  cell: 'A1',
  grade: 'out',
});
const read = (id: string, cardCode: string): PutAside => ({
  key: id,
  change: { kind: 'read', studyId: 's1', events: [event(id, cardCode)] },
  why,
});

describe('what the server would not take', () => {
  it('is told by card and by reason', () => {
    const tally: PutAside = {
      key: 'k',
      change: { kind: 'remove-tally', studyId: 's1', tallyId: 't1' },
      why,
    };
    const groups = asideGroups([read('1', 'AAAA'), read('2', 'BBBB'), tally, read('3', 'AAAA')]);
    expect(groups.map(({ cardCode, all }) => [cardCode, all.length])).toEqual([
      ['AAAA', 2],
      ['BBBB', 1],
      [undefined, 1],
    ]);
  });

  it('can be said of another card, event by event under its own name', () => {
    const [group] = asideGroups([read('1', 'AAAA'), read('2', 'AAAA')]);
    if (group === undefined) throw new Error('no group');
    expect(ofCard(group, { studyId: 's2', cardCode: 'CCCC' })).toEqual({
      kind: 'read',
      studyId: 's2',
      events: [event('1', 'CCCC'), event('2', 'CCCC')],
    });
  });
});
