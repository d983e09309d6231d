import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { successRunSize } from './successRun.ts';

describe('successRunSize', () => {
  it('gives the well-known sizes', () => {
    expect(successRunSize({ reliability: 0.95, confidence: 0.95 })).toBe(59);
    expect(successRunSize({ reliability: 0.99, confidence: 0.95 })).toBe(299);
    expect(successRunSize({ reliability: 0.99, confidence: 0.99 })).toBe(459);
    // A model-free 97 in 100 at 95 % needs 99 clean parts in a row: 0.97ⁿ ≤ 0.05.
    expect(successRunSize({ reliability: 0.97, confidence: 0.95 })).toBe(99);
  });

  it('meets a wish that comes out even, exactly', () => {
    expect(successRunSize({ reliability: 0.5, confidence: 0.75 })).toBe(2);
    expect(successRunSize({ reliability: 0.5, confidence: 0.5 })).toBe(1);
  });

  it('is the smallest for none failed, and grows with the failures', () => {
    const share = fc.double({ min: 0.05, max: 0.995, noNaN: true });
    fc.assert(
      fc.property(share, share, (reliability, confidence) => {
        const n = successRunSize({ reliability, confidence });
        expect(reliability ** n).toBeLessThanOrEqual((1 - confidence) * (1 + 1e-9));
        if (n > 1) expect(reliability ** (n - 1)).toBeGreaterThan(1 - confidence);
        expect(successRunSize({ reliability, confidence, failures: 1 })).toBeGreaterThan(n);
      }),
    );
  });
});
