import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { fitBiasReduced, fitBinary, type BinaryFit } from './binaryRegression.ts';
import { doseAt } from './doseLimits.ts';
import { goodnessOfFit } from './goodnessOfFit.ts';
import type { BinaryRow } from './separation.ts';

const twoColumns = (
  a: readonly [number, number],
  b: readonly [number, number],
): readonly BinaryRow[] => [
  { x: [1, 0], successes: a[0], trials: a[0] + a[1] },
  { x: [1, 1], successes: b[0], trials: b[0] + b[1] },
];

const fitOf = (outcome: ReturnType<typeof fitBinary>): BinaryFit => {
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome;
};

/** Counts at six speeds with some of each outcome overlapping, so that a finite estimate exists. */
const counts = fc
  .array(fc.integer({ min: 1, max: 9 }), { minLength: 6, maxLength: 6 })
  .map((successes) =>
    successes.map((count, i): BinaryRow => ({ x: [1, 10 + 2 * i], trials: 10, successes: count })),
  );

describe('fitBinary', () => {
  it('gives the log odds ratio of a two-by-two table, with its textbook variance', () => {
    const fit = fitOf(fitBinary(twoColumns([8, 2], [3, 7]), 'logit'));
    expect(fit.coefficients[1]).toBeCloseTo(Math.log((3 * 2) / (7 * 8)), 12);
    expect(fit.covariance[1]?.[1]).toBeCloseTo(1 / 8 + 1 / 2 + 1 / 3 + 1 / 7, 12);
  });

  it('fits Bliss’s beetles as R does', () => {
    // R 4.2.2 glm, probit: the doses are log10, the counts those printed by Bliss 1935.
    const dose = [1.6907, 1.7242, 1.7552, 1.7842, 1.8113, 1.8369, 1.861, 1.8839];
    const n = [59, 60, 62, 56, 63, 59, 62, 60];
    const rows = [6, 13, 18, 28, 52, 53, 61, 60].map((successes, i) => ({
      x: [1, dose[i] ?? NaN],
      trials: n[i] ?? NaN,
      successes,
    }));
    const fit = fitOf(fitBinary(rows, 'probit'));
    expect(fit.coefficients[0]).toBeCloseTo(-34.9352588992, 7);
    expect(goodnessOfFit(rows, fit).deviance).toBeCloseTo(10.119758113, 8);
  });

  it.each(['logit', 'probit', 'cloglog'] as const)(
    'stands at the top of the %s likelihood, in any unit',
    (link) => {
      fc.assert(
        fc.property(counts, (rows) => {
          const fit = fitOf(fitBinary(rows, link));
          const inInches = rows.map((row) => ({
            ...row,
            x: row.x.map((x, k) => (k === 1 ? x / 25.4 : x)),
          }));
          const other = fitOf(fitBinary(inInches, link));
          expect(other.logLikelihood).toBeCloseTo(fit.logLikelihood, 8);
          expect((other.coefficients[1] ?? NaN) / 25.4).toBeCloseTo(fit.coefficients[1] ?? NaN, 8);
          // The mean of the logit's fitted probabilities is the share that was seen.
          if (link !== 'logit') return;
          const seen = rows.reduce((sum, row) => sum + row.successes, 0);
          expect(fit.fitted.reduce((sum, p) => sum + 10 * p, 0)).toBeCloseTo(seen, 8);
        }),
        { numRuns: 40 },
      );
    },
  );

  it('says that separated data have no estimate, and never a number', () => {
    expect(fitBinary(twoColumns([10, 0], [0, 10]), 'probit')).toEqual({
      ok: false,
      reason: 'separated',
      separation: 'complete',
    });
  });

  it('says that covariates depend on each other', () => {
    const rows = twoColumns([8, 2], [3, 7]).map((row) => ({
      ...row,
      x: [...row.x, 2 * (row.x[1] ?? 0)],
    }));
    expect(fitBinary(rows, 'logit')).toEqual({ ok: false, reason: 'dependent-covariates' });
  });
});

describe('fitBiasReduced', () => {
  it('adds half a count to each cell of a two-by-two table', () => {
    // Firth 1993: for a saturated logistic model the adjustment is ½ in every cell.
    const fit = fitOf(fitBiasReduced(twoColumns([10, 0], [0, 10]), 'logit'));
    expect(fit.coefficients[0]).toBeCloseTo(Math.log(10.5 / 0.5), 10);
    expect(fit.coefficients[1]).toBeCloseTo(-2 * Math.log(10.5 / 0.5), 10);
  });

  it('is finite for any data, and pulls towards nothing', () => {
    const outcomes = fc.array(fc.constantFrom(0, 1), { minLength: 5, maxLength: 12 });
    fc.assert(
      fc.property(outcomes, fc.constantFrom('logit', 'probit'), (successes, link) => {
        const rows = successes.map((success, i) => ({ x: [1, i], trials: 1, successes: success }));
        const fit = fitOf(fitBiasReduced(rows, link));
        expect(fit.coefficients.every(Number.isFinite)).toBe(true);
        const ordinary = fitBinary(rows, link);
        if (ordinary.ok && Math.abs(ordinary.coefficients[1] ?? 0) > 0.3) {
          expect(Math.abs(fit.coefficients[1] ?? NaN)).toBeLessThan(
            Math.abs(ordinary.coefficients[1] ?? NaN),
          );
        }
      }),
    );
  });
});

describe('doseAt', () => {
  it('has limits where the line’s own error band crosses the level', () => {
    fc.assert(
      fc.property(counts, fc.constantFrom(0.1, 0.5, 0.97), (rows, p) => {
        const fit = fitOf(fitBinary(rows, 'logit'));
        const { fiellerLimits, fiellerG } = doseAt(fit, p);
        expect(fiellerLimits === null).toBe(fiellerG >= 1);
        const [a = NaN, b = NaN] = fit.coefficients;
        const [[vaa = NaN, vab = NaN] = [], [, vbb = NaN] = []] = fit.covariance;
        for (const x of fiellerLimits ?? []) {
          const off = (a + b * x - Math.log(p / (1 - p))) ** 2;
          const band = 1.959963984540054 ** 2 * (vaa + 2 * x * vab + x * x * vbb);
          expect(Math.abs(off - band)).toBeLessThan(1e-8 * (1 + band));
        }
      }),
    );
  });
});
