import { z } from 'zod';

import { fitBinary, type BinaryOutcome } from '../../num/binaryRegression.ts';
import { doseAt } from '../../num/doseLimits.ts';
import { goodnessOfFit } from '../../num/goodnessOfFit.ts';
import { binaryRows, linkName, numbers, standardErrors } from './binaryRows.ts';
import { byKind } from './byKind.ts';

/** What is said where there is no estimate: a reason, never a number. */
export const refusal = (fit: BinaryOutcome & { readonly ok: false }): object =>
  fit.reason === 'separated'
    ? { finiteMLE: false, separation: fit.separation }
    : { finiteMLE: null, reason: fit.reason };

const oneCovariate = z
  .object({ link: linkName, x: numbers, n: numbers, y: numbers })
  .transform(({ link, x, n, y }) => {
    const rows = binaryRows([x], y, n);
    const fit = fitBinary(rows, link);
    if (!fit.ok) return refusal(fit);
    const good = goodnessOfFit(rows, fit);
    return {
      intercept: fit.coefficients[0],
      slope: fit.coefficients[1],
      se: standardErrors(fit.covariance),
      vcov: fit.covariance,
      deviance: good.deviance,
      nullDeviance: good.nullDeviance,
      residualDf: good.residualDegrees,
      pearsonX2: good.pearsonChiSquare,
      logLikWithBinomialConstant: good.logLikelihoodWithConstant,
      logLikWithoutConstant: fit.logLikelihood,
      fitted: fit.fitted,
      doses: [0.5, 0.1, 0.9, 0.97].map((p) => {
        const { dose, standardError, deltaLimits, fiellerLimits, fiellerG } = doseAt(fit, p);
        const fieller95 = fiellerLimits ?? 'unbounded (g >= 1)';
        return { p, dose, se: standardError, delta95: deltaLimits, fieller95, fiellerG };
      }),
    };
  });

const powerSpeed = z
  .object({ link: linkName, P: numbers, v: numbers, y: numbers, P0: z.number().positive() })
  .transform(({ link, P, v, y, P0 }) => {
    const rows = binaryRows([P.map((power) => Math.log(power / P0)), v.map(Math.log)], y);
    const fit = fitBinary(rows, link);
    if (!fit.ok) return refusal(fit);
    const [intercept = NaN, lnPoverP0 = NaN, lnV = NaN] = fit.coefficients;
    return {
      coef: { intercept, lnPoverP0, lnV },
      se: standardErrors(fit.covariance),
      vcov: fit.covariance,
      deviance: goodnessOfFit(rows, fit).deviance,
      logLik: fit.logLikelihood,
      derived: { sigma: -1 / lnV, a: -intercept / lnV, b: -lnPoverP0 / lnV },
    };
  });

/** Binary regression by maximum likelihood, with doses and their limits. */
export const t01 = byKind({ 'one-covariate': oneCovariate, 'power-speed': powerSpeed });
