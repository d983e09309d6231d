import { describe, expect, it } from 'vitest';
import { measureEarlierRule } from './earlierRule.ts';
import { measureLeaveOneOut } from './leaveOneOut.ts';

describe('an answer without a cell or a rung', () => {
  it('moves as between two large fits, within 1 % of the speed', () => {
    const { parts, medianErrorPct, worstErrorPct, worstShiftPct } = measureLeaveOneOut(1, 3);
    expect(parts).toBeGreaterThan(10);
    expect(medianErrorPct).toBeLessThan(0.25);
    expect(worstErrorPct).toBeLessThan(1);
    // The shifts themselves are larger, so that agreeing means something.
    expect(worstShiftPct).toBeGreaterThan(2);
  }, 60_000);
});

describe('earlier sheets that a new one is held against', () => {
  it('are seldom left without cause, and mostly where the new sheet cuts two fifths slower', () => {
    const alike = measureEarlierRule('of-the-same-kind', 6, 2);
    const other = measureEarlierRule('two-fifths-slower', 6, 2);
    expect(alike.everStoppedPct).toBeLessThan(20);
    expect(other.stoppedPct).toBeGreaterThan(30);
  }, 120_000);
});
