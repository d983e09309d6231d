import { z } from 'zod';

import { fitBinary, type BinaryFit } from '../../num/binaryRegression.ts';
import { goodnessOfFit } from '../../num/goodnessOfFit.ts';
import {
  separationGap,
  separationOf,
  type BinaryRow,
  type Separation,
} from '../../num/separation.ts';
import { spearmanKarber } from '../../num/spearmanKarber.ts';
import { dixonMood } from '../../num/upAndDown.ts';
import { binaryRows, linkName, numbers, standardErrors } from './binaryRows.ts';
import { byKind } from './byKind.ts';
import { refusal } from './t01.ts';

/** Where half respond, and how sharply: for a probit line the mean and sd of the tolerances, by the delta method. */
const tolerance = (fit: BinaryFit): object => {
  const [a = NaN, b = NaN] = fit.coefficients;
  const [[vaa = NaN, vab = NaN] = [], [, vbb = NaN] = []] = fit.covariance;
  const mu = -a / b;
  return {
    beta: fit.coefficients,
    seBeta: standardErrors(fit.covariance),
    mu,
    sigma: 1 / Math.abs(b),
    seMu: Math.sqrt(vaa + 2 * mu * vab + mu * mu * vbb) / Math.abs(b),
    seSigma: Math.sqrt(vbb) / (b * b),
    logLik: fit.logLikelihood,
  };
};

const heights = z.object({ height: numbers, y: numbers }).transform(({ height, y }) => {
  const fit = fitBinary(binaryRows([height.map(Math.log10)], y), 'probit');
  if (!fit.ok) return refusal(fit);
  const [a = NaN, b = NaN] = fit.coefficients;
  return { ...tolerance(fit), medianHeight: 10 ** (-a / b) };
});

const answerFor = (rows: readonly BinaryRow[], link: z.infer<typeof linkName>): object => {
  const fit = fitBinary(rows, link);
  if (!fit.ok) return refusal(fit);
  const [a = NaN, b = NaN] = fit.coefficients;
  return {
    coef: fit.coefficients,
    se: standardErrors(fit.covariance),
    deviance: goodnessOfFit(rows, fit).deviance,
    logLik: fit.logLikelihood,
    ...(fit.coefficients.length === 2 ? { x50: -a / b } : {}),
  };
};

const oneCovariate = z
  .object({ link: linkName, x: numbers, y: numbers })
  .transform(({ link, x, y }) => answerFor(binaryRows([x], y), link));

const twoCovariates = z
  .object({ link: linkName, volume: numbers, rate: numbers, y: numbers })
  .transform(({ link, volume, rate, y }) =>
    answerFor(binaryRows([volume.map(Math.log), rate.map(Math.log)], y), link),
  );

const staircase = z
  .object({ step: z.number().positive(), x: numbers, y: numbers, responseFallsWithX: z.boolean() })
  .transform(({ step, x, y, responseFallsWithX }) => {
    const trials = x.map((level, i) => ({ level, responded: y[i] === 1 }));
    const estimate = dixonMood(trials, { step, risesWithLevel: !responseFallsWithX });
    const fit = fitBinary(binaryRows([x], y), 'probit');
    const mle = fit.ok ? tolerance(fit) : refusal(fit);
    if (estimate === null) return { mle, dixonMood: null };
    const [N, A, B] = estimate.sums;
    const { usedResponse, sdFormulaHolds, ...rest } = estimate;
    return {
      mle,
      dixonMood: {
        ...rest,
        usedResponse: Number(usedResponse),
        N,
        A,
        B,
        sdFormulaValid: sdFormulaHolds,
      },
    };
  });

const trims = [0, 0.05, 0.1, 0.2];

const meanTolerance = z
  .object({ dose: numbers, n: numbers, responded: numbers })
  .transform(({ dose, n, responded }) => {
    const data = dose.map((one, i) => ({
      x: Math.log(one),
      trials: n[i] ?? NaN,
      responded: responded[i] ?? NaN,
    }));
    const untrimmed = spearmanKarber(data);
    return {
      trim: trims,
      ed50: trims.map((trim) => {
        const found = spearmanKarber(data, trim);
        return found === null ? null : Math.exp(found.mean);
      }),
      untrimmedSeLn: untrimmed?.standardError ?? null,
      limits2se: untrimmed?.limits?.map(Math.exp) ?? null,
    };
  });

const separationNames: Readonly<Record<Separation, string | null>> = {
  none: null,
  'all-the-same': 'all the same',
  complete: 'complete',
  'quasi-complete': 'quasi-complete',
};

const parted = z.object({ x: numbers, y: numbers }).transform(({ x, y }) => {
  const separation = separationOf(binaryRows([x], y));
  return {
    finiteMLE: separation === 'none',
    separation: separationNames[separation],
    gap: separationGap(x.map((at, i) => ({ x: at, success: y[i] === 1 }))),
  };
});

/** Sensitivity trials: probit tolerances, up-and-down series, mean tolerance without a model, separation. */
export const t05 = byKind({
  'raw-binary-probit': heights,
  'raw-binary': oneCovariate,
  'raw-binary-two-covariates': twoCovariates,
  staircase,
  'spearman-karber': meanTolerance,
  separation: parted,
});
