import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sampleOrder, sampleTally } from '../../../test/samples/studies.ts';
import { nextSheetName, orderSoFar, planWishOf, runningOrder } from './orderSoFar.ts';
import type { RecordedTally } from './study.ts';

const order = sampleOrder('o1', { parts: 90 });

const count = (id: string, sheet: string, over: Partial<RecordedTally> = {}): RecordedTally => ({
  ...sampleTally(id),
  ...{ orderId: 'o1', sheet, out: 30, hangs: 0, stays: 0, spoilt: 0 },
  ...over,
});

describe('how far an order is', () => {
  it('counts what hangs as good, what is not through or spoilt as cut again', () => {
    const soFar = orderSoFar(order, [
      count('a', '1', { out: 26, hangs: 2, stays: 1, spoilt: 1 }),
      count('b', '2'),
      count('c', '2', { orderId: 'another' }),
    ]);
    expect(soFar).toMatchObject({ good: 58, left: 32, isDone: false });
    expect(planWishOf(order, soFar)).toMatchObject({ parts: 90, done: 58 });
  });

  it('puts two settings of one sheet together, the one with more parts first', () => {
    const { sheets } = orderSoFar(order, [
      count('a', '1', { out: 6 }),
      count('b', '1', { out: 23, hangs: 1 }),
    ]);
    expect(sheets).toHaveLength(1);
    expect(sheets[0]).toMatchObject({ number: 1, parts: 30, out: 29, hangs: 1 });
    expect(sheets[0]?.tallies.map(({ id }) => id)).toEqual(['b', 'a']);
  });

  it('names each sheet as no other, also where one in the middle was taken away', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { maxLength: 12 }), (kept) => {
        let tallies: readonly RecordedTally[] = [];
        for (const [i, stays] of kept.entries()) {
          const sheet = nextSheetName(order, orderSoFar(order, tallies));
          expect(tallies.some((tally) => tally.sheet === sheet)).toBe(false);
          tallies = [...tallies, count(String(i), sheet)];
          if (!stays) tallies = tallies.slice(1);
        }
      }),
    );
  });

  it('is done with the last good part or when somebody ended it; the newest that is not done runs', () => {
    const ended = sampleOrder('o2', { endedAt: order.startedAt });
    expect(orderSoFar(ended, []).isDone).toBe(true);
    const all = ['1', '2', '3'].map((sheet) => count(sheet, sheet));
    expect(orderSoFar(order, all)).toMatchObject({ left: 0, isDone: true });
    expect(runningOrder([order, ended], [])?.id).toBe('o1');
    expect(runningOrder([order, ended], all)?.id).toBe('o2');
    expect(runningOrder([], [])).toBeUndefined();
  });
});
