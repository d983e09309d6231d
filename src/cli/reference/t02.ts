import { z } from 'zod';

import { fitOrdinal, type OrdinalRow } from '../../num/ordinalRegression.ts';
import { linkName, numbers, standardErrors } from './binaryRows.ts';
import { byKind } from './byKind.ts';

type Link = z.infer<typeof linkName>;

const answerFor = (rows: readonly OrdinalRow[], link: Link): object => {
  const fit = fitOrdinal(rows, link);
  if (!fit.ok) return { finiteMLE: fit.reason === 'separated' ? false : null, reason: fit.reason };
  return {
    thresholds: fit.thresholds,
    beta: fit.slopes,
    seThresholdsThenBeta: standardErrors(fit.covariance),
    vcov: fit.covariance,
    logLik: fit.logLikelihood,
  };
};

const counted = z.object({ x: numbers, counts: z.array(z.number().min(0)) });

const factorial = z
  .object({ link: linkName, rows: z.array(counted) })
  .transform(({ link, rows }) => answerFor(rows, link));

const grouped = z
  .object({ link: linkName, x: numbers, counts: z.array(z.array(z.number().min(0))) })
  .transform(({ link, x, counts }) =>
    answerFor(
      counts.map((row, i) => ({ x: [x[i] ?? NaN], counts: row })),
      link,
    ),
  );

const graded = z
  .object({
    link: linkName,
    order: z.array(z.string()),
    P0: z.number().positive(),
    P: numbers,
    v: numbers,
    grade: z.array(z.string()),
  })
  .transform(({ link, order, P0, P, v, grade }) =>
    answerFor(
      grade.map((seen, i) => ({
        x: [Math.log((P[i] ?? NaN) / P0), Math.log(v[i] ?? NaN)],
        counts: order.map((name) => (name === seen ? 1 : 0)),
      })),
      link,
    ),
  );

/** Cumulative link regression of grades. */
export const t02 = byKind({
  'factorial-counts': factorial,
  'power-speed-grades': graded,
  'grouped-counts': grouped,
});
