import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import '../../../test/fixedSeed.ts';
import { edgesOf, type EdgeGrade, type EdgeKind } from '../reading/edge.ts';
import { edgeBeliefs, type EdgeCut } from './edgeBeliefs.ts';

const cut = (speedMmPerS: number, edge: EdgeGrade, count = 1, powerPct = 40): EdgeCut => ({
  ...{ powerPct, speedMmPerS, edge, count },
});
const at = (speedMmPerS: number, powerPct = 40) => ({ powerPct, speedMmPerS });

describe('what graded edges let expect', () => {
  it('is the share that was seen, where very many were', () => {
    // At 12 mm/s the logistic's own share: (ln 12 − ln 10) / 0.1 above the change, 86.1 % clean.
    const clean = (speed: number) => Math.round(4000 / (1 + (10 / speed) ** 10));
    const cuts = [8, 9, 10, 11, 13].flatMap((speed) => [
      cut(speed, 'clean', clean(speed)),
      cut(speed, 'brown', 4000 - clean(speed)),
    ]);
    const share = edgeBeliefs(cuts, 'wood').shareAt(at(12));
    expect(share.meanOf100).toBeGreaterThan(82);
    expect(share.meanOf100).toBeLessThan(90);
  });

  it('is cleaner with less heat in wood, and best between two changes in acrylic', () => {
    const wood = edgeBeliefs(
      [cut(8, 'black', 2), cut(10, 'brown', 2), cut(14, 'clean', 3)],
      'wood',
    );
    const shares = [8, 10, 12, 14].map((speed) => wood.shareAt(at(speed)).meanOf100);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    const acrylic = edgeBeliefs(
      [cut(6, 'flamed', 3), cut(10, 'clear', 3), cut(16, 'frosted', 3)],
      'acrylic',
    );
    const [hot, between, cold] = [6, 10, 16].map((speed) => acrylic.shareAt(at(speed)).meanOf100);
    expect(between).toBeGreaterThan(60);
    expect(hot).toBeLessThan(25);
    expect(cold).toBeLessThan(25);
    expect(acrylic.surelyBetterPct(at(10), at(16))).toBeGreaterThan(90);
  });

  it('does not depend on the unit of speed', () => {
    const cuts = [cut(8, 'brown', 3), cut(10, 'clean', 2), cut(12, 'clean', 2, 50)];
    const inches = cuts.map((one) => ({ ...one, speedMmPerS: one.speedMmPerS / 25.4 }));
    const mm = edgeBeliefs(cuts, 'wood').shareAt(at(9));
    const inch = edgeBeliefs(inches, 'wood').shareAt(at(9 / 25.4));
    expect(inch.meanOf100).toBeCloseTo(mm.meanOf100, 8);
    expect(inch.atLeastOf100).toBeCloseTo(mm.atLeastOf100, 2);
  });

  it('is less sure of fewer edges, and of another power', () => {
    const some = [cut(8, 'brown', 2), cut(12, 'clean', 2)];
    const many = some.map((one) => ({ ...one, count: 20 }));
    const least = (cuts: readonly EdgeCut[], powerPct = 40) =>
      edgeBeliefs(cuts, 'wood').shareAt(at((12 * powerPct) / 40, powerPct)).atLeastOf100;
    expect(least(many)).toBeGreaterThan(least(some) + 10);
    const twoPowers = [...many, cut(12, 'clean', 1, 41)];
    expect(least(twoPowers, 80)).toBeLessThan(least(twoPowers));
  });

  const anyCuts = (kind: EdgeKind) =>
    fc.array(
      fc.record({
        powerPct: fc.constantFrom(30, 40),
        speedMmPerS: fc.integer({ min: 8, max: 18 }),
        edge: fc.constantFrom(...edgesOf[kind]),
        count: fc.integer({ min: 1, max: 4 }),
      }),
      { minLength: 2, maxLength: 10 },
    );

  it.each(['wood', 'acrylic'] as const)(
    'never promises more at the very setting whose edge was worse, in %s',
    (kind) => {
      const [best, ...worse] = edgesOf[kind];
      fc.assert(
        fc.property(anyCuts(kind), at2(), fc.constantFrom(...worse), (others, spot, grade) => {
          const withOne = (edge: EdgeGrade) =>
            edgeBeliefs([...others, { ...spot, edge, count: 1 }], kind).shareAt(spot).meanOf100;
          expect(withOne(grade)).toBeLessThanOrEqual(withOne(best) + 1e-9);
        }),
        { numRuns: 60 },
      );
    },
  );
});

const at2 = () =>
  fc.record({
    powerPct: fc.constantFrom(30, 40),
    speedMmPerS: fc.integer({ min: 8, max: 18 }),
  });
