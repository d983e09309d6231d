import { describe, expect, it } from 'vitest';

import { measureAgreement } from './agreement.ts';

describe('places where the head slows', () => {
  it('come out as they do where every line is walked in steps of a few µm', () => {
    const found = measureAgreement(12, 4);
    expect(found.places).toBeGreaterThan(300);
    expect(found.missedRuns).toBe(0);
    // All three verdicts occur, so that agreeing means something.
    for (const count of Object.values(found.withVerdict)) expect(count).toBeGreaterThan(5);
    expect(found.agreeing / found.places).toBeGreaterThanOrEqual(0.99);
  });
});
