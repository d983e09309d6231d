import { expect, it } from 'vitest';
import { longestPulseS } from './meterPulse.ts';

it('gets shorter as the power rises, and leaves the needle time to rise', () => {
  // Common practice, no source.
  expect([5, 20, 30, 40, 60, 100].map(longestPulseS)).toEqual([1, 1, 0.6, 0.5, 0.3, 0.3]);
  for (let powerPct = 1; powerPct < 60; powerPct += 1)
    expect(longestPulseS(powerPct) * powerPct).toBeLessThanOrEqual(20 + 1e-9);
});
