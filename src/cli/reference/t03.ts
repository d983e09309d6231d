import { z } from 'zod';

import { fitOrdinal } from '../../num/ordinalRegression.ts';
import { linkName, standardErrors } from './binaryRows.ts';
import type { Answerer } from './referenceFile.ts';

/** Factors in the middle columns, the grade in the first, how often in the last. */
const table = z.object({
  columns: z.array(z.string()),
  rows: z.array(z.array(z.union([z.string(), z.number()]))),
});

/** Grades and levels in order of their first row, the first level of each factor as the one compared with. */
export const t03: Answerer = (input, data) => {
  const { link } = z.object({ link: linkName }).parse(input);
  const { columns, rows } = table.parse(data);
  const levels = columns.map((_, k) => [...new Set(rows.map((row) => row[k]))]);
  const grades = levels[0] ?? [];
  const contrasts = columns
    .slice(1, -1)
    .flatMap((name, i) =>
      (levels[i + 1] ?? [])
        .slice(1)
        .map((level) => ({ name: `${name}${String(level)}`, column: i + 1, level })),
    );
  const fit = fitOrdinal(
    rows.map((row) => ({
      x: contrasts.map(({ column, level }) => (row[column] === level ? 1 : 0)),
      counts: grades.map((grade) => (row[0] === grade ? Number(row.at(-1)) : 0)),
    })),
    link,
  );
  if (!fit.ok) return { reason: fit.reason };
  const cuts = fit.thresholds.map((_, j) => `${String(grades[j])}|${String(grades[j + 1])}`);
  const names = [...cuts, ...contrasts.map(({ name }) => name)];
  const errors = standardErrors(fit.covariance);
  return {
    deviance: -2 * fit.logLikelihood,
    logLik: fit.logLikelihood,
    thresholds: named(cuts, fit.thresholds),
    beta: named(names.slice(cuts.length), fit.slopes),
    seThresholdsThenBeta: named(names, errors),
  };
};

const named = (names: readonly string[], values: readonly number[]): object =>
  Object.fromEntries(names.map((name, i) => [name, values[i]]));
