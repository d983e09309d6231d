import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { fitBinary } from './binaryRegression.ts';
import { fitOrdinal, type OrdinalFit, type OrdinalRow } from './ordinalRegression.ts';

const fitOf = (outcome: ReturnType<typeof fitOrdinal>): OrdinalFit => {
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome;
};

const counts = fc
  .array(
    fc.tuple(
      fc.integer({ min: 1, max: 9 }),
      fc.integer({ min: 1, max: 9 }),
      fc.integer({ min: 1, max: 9 }),
    ),
    {
      minLength: 4,
      maxLength: 6,
    },
  )
  .map((rows) =>
    rows.map((three, i): OrdinalRow => ({ x: [Math.log(10 + 2 * i)], counts: three })),
  );

describe('fitOrdinal', () => {
  it('fits the bitterness of wine as R does', () => {
    // Randall 1989; R ordinal::clm, probit, temperature and contact.
    const rows: readonly OrdinalRow[] = [
      { x: [0, 0], counts: [4, 9, 5, 0, 0] },
      { x: [1, 0], counts: [0, 5, 8, 3, 2] },
      { x: [0, 1], counts: [1, 7, 8, 2, 0] },
      { x: [1, 1], counts: [0, 1, 5, 7, 5] },
    ];
    const fit = fitOf(fitOrdinal(rows, 'logit'));
    expect(fit.slopes[0]).toBeCloseTo(2.5031020079, 8);
    expect(fit.thresholds[3]).toBeCloseTo(5.00640420427, 8);
    expect(fit.logLikelihood).toBeCloseTo(-86.4919233656, 8);
  });

  it('with two grades is binary regression, its slope turned round', () => {
    fc.assert(
      fc.property(counts, fc.constantFrom('logit', 'probit'), (rows, link) => {
        const two = rows.map(({ x, counts: [a = 0, b = 0] }) => ({ x, counts: [a, b] }));
        const ordinal = fitOf(fitOrdinal(two, link));
        const binary = fitBinary(
          two.map(({ x, counts: [a = 0, b = 0] }) => ({
            x: [1, ...x],
            trials: a + b,
            successes: a,
          })),
          link,
        );
        expect(binary.ok).toBe(true);
        if (!binary.ok) return;
        expect(ordinal.thresholds[0]).toBeCloseTo(binary.coefficients[0] ?? NaN, 7);
        expect(ordinal.slopes[0]).toBeCloseTo(-(binary.coefficients[1] ?? NaN), 7);
        expect(ordinal.logLikelihood).toBeCloseTo(binary.logLikelihood, 8);
      }),
      { numRuns: 40 },
    );
  });

  it('turns round with its grades, where the link is even', () => {
    fc.assert(
      fc.property(counts, (rows) => {
        const fit = fitOf(fitOrdinal(rows, 'probit'));
        const turned = fitOf(
          fitOrdinal(
            rows.map((row) => ({ ...row, counts: row.counts.toReversed() })),
            'probit',
          ),
        );
        expect(turned.slopes[0]).toBeCloseTo(-(fit.slopes[0] ?? NaN), 7);
        expect(turned.thresholds[0]).toBeCloseTo(-(fit.thresholds[1] ?? NaN), 6);
        expect(turned.logLikelihood).toBeCloseTo(fit.logLikelihood, 8);
      }),
      { numRuns: 40 },
    );
  });

  it('says when no finite estimate exists, and when a grade never came up', () => {
    const parted = [
      { x: [1], counts: [3, 0, 0] },
      { x: [2], counts: [0, 2, 0] },
      { x: [3], counts: [0, 0, 4] },
    ];
    expect(fitOrdinal(parted, 'logit')).toEqual({ ok: false, reason: 'separated' });
    const unused = parted.map((row) => ({ ...row, counts: [...row.counts, 0] }));
    expect(fitOrdinal(unused, 'logit')).toEqual({ ok: false, reason: 'unused-grade' });
  });
});
