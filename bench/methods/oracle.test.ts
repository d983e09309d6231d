import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { play } from '../campaign.ts';
import * as powerLaw from '../workshops/powerLaw.ts';
import { gradeShares, marginKeeping, oracle } from './oracle.ts';
import { stepShop } from './stepShop.ts';

const truth = {
  link: 'normal',
  sigma: 0.08,
  hangBand: 0.06,
  sheetSd: 0.06,
  flawShare: 0.02,
  misreadShare: 0.01,
} as const;

describe('the bound', () => {
  // Normal scatter and normal sheets add in squares: 0.1; the 97 % point is 1.8808 of it.
  it('knows the margin that keeps the share', () => {
    expect(marginKeeping(truth)).toBeCloseTo(0.18808, 4);
  });

  it('knows how the grades share out', () => {
    const shares = gradeShares(truth, 0);
    expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
    expect(shares[0]).toBeCloseTo(0.98 * 0.5 * 0.985 + 0.005, 9);
  });

  it('says nothing where nobody tells the truth', () => {
    const { shop } = stepShop(17);
    const verdict = oracle.play(shop, seededRandom(1), { cellsAtMost: 6, settingsAtMost: 6 });
    expect(verdict.speedMmPerS).toBeNull();
  });

  it('keeps its promise about as often as it says', () => {
    const runs = Array.from({ length: 60 }, (_, i) =>
      play(powerLaw, oracle, i + 1, { cellsAtMost: 8, settingsAtMost: 8 }),
    );
    // 95 in 100 of 60: 57, sd 1.7.
    expect(runs.filter(({ kept }) => kept).length).toBeGreaterThan(51);
  });
});
