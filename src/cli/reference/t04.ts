import { z } from 'zod';

import { fitBiasReduced } from '../../num/binaryRegression.ts';
import { separationOf, type BinaryRow } from '../../num/separation.ts';
import { binaryRows, linkName, numbers, standardErrors } from './binaryRows.ts';
import type { Answerer } from './referenceFile.ts';

const oneCovariate = z.object({ link: linkName, x: numbers, n: numbers, y: numbers });

const table = z.object({ link: linkName });
const endometrial = z.object({
  endometrial: z.object({ columns: z.array(z.string()), rows: z.array(numbers) }),
});

const answerFor = (rows: readonly BinaryRow[], link: z.infer<typeof linkName>): object => {
  const maximumLikelihoodExists = separationOf(rows) === 'none';
  const reduced = fitBiasReduced(rows, link);
  const penalised = fitBiasReduced(rows, link, 'jeffreys');
  if (!reduced.ok || !penalised.ok) return { maximumLikelihoodExists };
  if (link !== 'logit') {
    return {
      coefFirthMeanBiasReduced: reduced.coefficients,
      coefJeffreysPenalised: penalised.coefficients,
      maximumLikelihoodExists,
    };
  }
  return {
    coef: reduced.coefficients,
    se: standardErrors(reduced.covariance),
    fitted: reduced.fitted,
    maximumLikelihoodExists,
  };
};

/** The last column of the table is the outcome; the coefficients are named for the others. */
const answerForTable = (link: z.infer<typeof linkName>, data: unknown): object => {
  const { columns, rows } = endometrial.parse(data).endometrial;
  const covariates = columns.slice(0, -1).map((_, k) => rows.map((row) => row[k] ?? NaN));
  const outcomes = rows.map((row) => row.at(-1) ?? NaN);
  const fit = fitBiasReduced(binaryRows(covariates, outcomes), link);
  if (!fit.ok) return { coef: null };
  const names = ['(Intercept)', ...columns.slice(0, -1)];
  return {
    coef: Object.fromEntries(names.map((name, i) => [name, fit.coefficients[i]])),
    se: standardErrors(fit.covariance),
  };
};

/** Firth's and Jeffreys' penalised fits, finite where maximum likelihood is not. */
export const t04: Answerer = (input, data) => {
  if (input['kind'] === 'endometrial') return answerForTable(table.parse(input).link, data);
  if (input['kind'] !== 'one-covariate') return undefined;
  const { link, x, n, y } = oneCovariate.parse(input);
  return answerFor(binaryRows([x], y, n), link);
};
