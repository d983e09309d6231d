import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { links } from './links.ts';
import { marginKeeping, marginalShare } from './marginalShare.ts';

const [normal, logistic, student] = links;
if (!normal || !logistic || !student) throw new Error('three links');

describe('the share that comes out', () => {
  it('is Φ(m/√(σ² + s²)) for the normal link: E Φ((m + sZ)/σ), a known integral', () => {
    expect(marginalShare(normal, 0.15, 0.08, 0.06, 1)).toBeCloseTo(0.9331927987, 8); // Φ(1.5)
  });

  it('agrees with a fine sum over sheets for every link', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(logistic, student),
        fc.double({ min: -0.2, max: 0.4, noNaN: true }),
        fc.double({ min: 0.03, max: 0.2, noNaN: true }),
        fc.double({ min: 0, max: 0.12, noNaN: true }),
        (link, margin, sigma, scatter) => {
          let sum = 0;
          let weights = 0;
          for (let z = -7; z <= 7; z += 0.01) {
            const w = Math.exp(-0.5 * z * z);
            weights += w;
            sum += w * link.cdf((margin + scatter * z) / sigma);
          }
          expect(
            Math.abs(marginalShare(link, margin, sigma, scatter, 1) - sum / weights),
          ).toBeLessThan(2e-4);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('falls with length by the weakest-link rule: two lengths are two chances to fail', () => {
    for (const link of links) {
      expect(marginalShare(link, 0.1, 0.08, 0, 2)).toBeCloseTo(
        marginalShare(link, 0.1, 0.08, 0, 1) ** 2,
        8,
      );
    }
  });
});

describe('the margin that keeps a share', () => {
  it.each([0.9, 0.97, 0.9965])(
    'gives back the share %d, for every link, scatter and length',
    (share) => {
      for (const link of links) {
        for (const lengths of [1, 2.7]) {
          const margin = marginKeeping(link, share, lengths);
          for (const ratio of [0, 0.3, 1, 4]) {
            const sigma = 0.08;
            const back = marginalShare(link, margin(ratio) * sigma, sigma, ratio * sigma, lengths);
            expect(Math.abs(back - share)).toBeLessThan(ratio > 2 ? 2e-3 : 3e-4);
          }
        }
      }
    },
  );

  it('grows with scatter and with length', () => {
    for (const link of links) {
      const one = marginKeeping(link, 0.97, 1);
      const three = marginKeeping(link, 0.97, 3);
      expect(one(1)).toBeGreaterThan(one(0.2));
      expect(three(0.2)).toBeGreaterThan(one(0.2));
    }
  });
});
