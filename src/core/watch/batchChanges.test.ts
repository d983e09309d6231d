import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchChanges } from './batchChanges.ts';

const order = (batch?: string) =>
  ({ kind: 'order', ...(batch === undefined ? {} : { batch }) }) as const;
const strip = (batch: string) => ({ kind: 'strip', batch }) as const;

describe('where the batch changed', () => {
  it('is at the first count that names another batch than the one before', () => {
    const points = [order('spring'), order(), order('Spring '), order('autumn'), order('autumn')];
    expect(batchChanges(points, 'spring')).toEqual([{ atPoint: 3, from: 'spring', to: 'autumn' }]);
    expect(batchChanges([order('autumn'), order('spring')], 'spring')).toEqual([
      { atPoint: 0, from: 'spring', to: 'autumn' },
      { atPoint: 1, from: 'autumn', to: 'spring' },
    ]);
  });

  it('is not at a strip in the reference sheet, but at one in a new batch', () => {
    const points = [order(), strip('autumn'), strip('spring'), order('autumn')];
    expect(batchChanges(points, 'spring')).toEqual([{ atPoint: 1, from: 'spring', to: 'autumn' }]);
  });

  it('is not where nobody names one, nor where the first count names the first', () => {
    expect(batchChanges([order(), order()])).toEqual([]);
    expect(batchChanges([order('spring'), order()])).toEqual([]);
    expect(batchChanges([order(), order('autumn')])).toEqual([{ atPoint: 1, to: 'autumn' }]);
  });

  it('never follows on itself, and goes on from what it came to', () => {
    const point = fc.record(
      {
        kind: fc.constantFrom<'order' | 'strip'>('order', 'strip'),
        batch: fc.constantFrom('a', 'b', 'c'),
      },
      { requiredKeys: ['kind'] },
    );
    fc.assert(
      fc.property(fc.array(point), fc.constantFrom('a', 'b'), (points, kept) => {
        const changes = batchChanges(points, kept);
        changes.forEach(({ atPoint, from, to }, i) => {
          expect(to).not.toBe(from);
          expect(from).toBe(i === 0 ? kept : changes[i - 1]?.to);
          expect(atPoint).toBeGreaterThan(changes[i - 1]?.atPoint ?? -1);
          expect(points[atPoint]?.batch).toBe(to);
        });
      }),
    );
  });
});
