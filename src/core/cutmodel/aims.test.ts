import { describe, expect, it } from 'vitest';
import { pointForAim } from './aims.ts';

const line = [
  { powerPct: 20, speedMmPerS: 8 },
  { powerPct: 30, speedMmPerS: 14 },
  { powerPct: 40, speedMmPerS: 18 },
  { powerPct: 50, speedMmPerS: 20 },
];

describe('pointForAim', () => {
  it('takes the highest speed, the least power that is not much slower, or the least line energy', () => {
    expect(pointForAim(line, 'fastest')?.powerPct).toBe(50);
    expect(pointForAim(line, 'gentlest')?.powerPct).toBe(30);
    expect(pointForAim(line, 'cleanest')?.powerPct).toBe(30);
  });

  it('has nothing to choose from an empty line', () => {
    expect(pointForAim([], 'gentlest')).toBeUndefined();
  });
});
