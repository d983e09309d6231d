import { links, type Link, type LinkName } from './link.ts';
import { solveByScoring, type Standing } from './scoring.ts';
import { separationOf, type BinaryRow } from './separation.ts';
import type { Matrix } from './symmetricMatrix.ts';

/** How often each grade came up at given covariates, lowest grade first. No constant among the covariates. */
export interface OrdinalRow {
  readonly x: readonly number[];
  readonly counts: readonly number[];
}

export interface OrdinalFit {
  /** Ascending, one fewer than there are grades. */
  readonly thresholds: readonly number[];
  readonly slopes: readonly number[];
  /** Of the thresholds, then the slopes: the inverse of the observed information. */
  readonly covariance: Matrix;
  /** Σ counts·ln p, without the multinomial constant. */
  readonly logLikelihood: number;
  readonly iterations: number;
}

export type OrdinalOutcome =
  | ({ readonly ok: true } & OrdinalFit)
  | {
      readonly ok: false;
      readonly reason: 'separated' | 'unused-grade' | 'not-converged' | 'dependent-covariates';
    };

/**
 * Cumulative link regression (McCullagh 1980) by maximum likelihood: link(P(grade ≤ j)) = thresholdⱼ − slopes·x.
 * Newton’s method on the observed information, which is positive definite wherever the link is log-concave, as all
 * here are. Where no finite estimate exists, or a grade never came up, that is said instead of a number.
 */
export const fitOrdinal = (data: readonly OrdinalRow[], link: LinkName): OrdinalOutcome => {
  const totals = gradeTotals(data);
  if (totals.some((total) => total === 0)) return { ok: false, reason: 'unused-grade' };
  const centred = centre(data);
  if (separationOf(partingRows(centred.rows)) !== 'none') return { ok: false, reason: 'separated' };
  const cuts = totals.length - 1;
  const start = [...startingThresholds(totals, link), ...centred.means.map(() => 0)];
  const solved = solveByScoring((parameters) => standingAt(data, links[link], parameters), start);
  if (!solved.ok) return solved;
  const { parameters, covariance, iterations } = solved;
  return {
    ok: true,
    thresholds: parameters.slice(0, cuts),
    slopes: parameters.slice(cuts),
    covariance,
    logLikelihood: standingAt(data, links[link], parameters).height ?? NaN,
    iterations,
  };
};

const gradeTotals = (data: readonly OrdinalRow[]): readonly number[] =>
  (data[0]?.counts ?? []).map((_, j) => data.reduce((sum, row) => sum + (row.counts[j] ?? NaN), 0));

/** The thresholds without covariates: the link of the cumulative shares. */
const startingThresholds = (totals: readonly number[], link: LinkName): readonly number[] => {
  const total = totals.reduce((sum, count) => sum + count, 0);
  let below = 0;
  return totals.slice(0, -1).map((count) => {
    below += count;
    return links[link].predictor(below / total);
  });
};

const centre = (
  data: readonly OrdinalRow[],
): { readonly rows: readonly OrdinalRow[]; readonly means: readonly number[] } => {
  const width = data[0]?.x.length ?? 0;
  const means = Array.from({ length: width }, (_, k) =>
    data.reduce((sum, { x }) => sum + (x[k] ?? NaN) / data.length, 0),
  );
  const rows = data.map((row) => ({
    ...row,
    x: row.x.map((value, k) => value - (means[k] ?? NaN)),
  }));
  return { rows, means };
};

/**
 * Each grade seen asks two things of a direction in which the likelihood never falls: that the threshold above it does
 * not come down to it, and that the one below does not come up. So each is a success at the one and a failure at the
 * other, and what parts binary data parts these.
 */
const partingRows = (data: readonly OrdinalRow[]): readonly BinaryRow[] =>
  data.flatMap(({ x, counts }) => {
    const cuts = counts.length - 1;
    const at = (cut: number): readonly number[] => [
      ...Array.from({ length: cuts }, (_, k) => (k === cut ? 1 : 0)),
      ...x.map((value) => -value),
    ];
    return counts.flatMap((count, grade): BinaryRow[] => {
      if (count === 0) return [];
      const above = grade < cuts ? [{ x: at(grade), trials: 1, successes: 1 }] : [];
      const below = grade > 0 ? [{ x: at(grade - 1), trials: 1, successes: 0 }] : [];
      return [...above, ...below];
    });
  });

/** One side of a grade: where it stands on the link's scale, and what it weighs in the grade's probability. */
interface Side {
  readonly cut: number;
  readonly eta: number;
  /** Slope of ln p in η, and p″/p: both signed, the lower side negative. */
  readonly pull: number;
  readonly bend: number;
}

const standingAt = (
  data: readonly OrdinalRow[],
  link: Link,
  parameters: readonly number[],
): Standing => {
  const score = parameters.map(() => 0);
  const information = parameters.map(() => parameters.map(() => 0));
  let height = 0;
  for (const { x, counts } of data) {
    const cuts = counts.length - 1;
    const shift = x.reduce((sum, value, k) => sum + value * (parameters[cuts + k] ?? NaN), 0);
    for (const [grade, count] of counts.entries()) {
      if (count === 0) continue;
      const lower = grade > 0 ? (parameters[grade - 1] ?? NaN) - shift : -Infinity;
      const upper = grade < cuts ? (parameters[grade] ?? NaN) - shift : Infinity;
      const p = probabilityBetween(link, lower, upper);
      height += count * Math.log(p);
      const sides = [
        ...(grade < cuts ? [sideAt(link, { cut: grade, eta: upper, sign: 1, p })] : []),
        ...(grade > 0 ? [sideAt(link, { cut: grade - 1, eta: lower, sign: -1, p })] : []),
      ];
      addGrade({ score, information, sides, x, cuts, count });
    }
  }
  return { score, information, height };
};

const sideAt = (
  link: Link,
  { cut, eta, sign, p }: { cut: number; eta: number; sign: 1 | -1; p: number },
): Side => {
  const density = (sign * link.gain(eta) * link.probability(eta)) / p;
  return { cut, eta, pull: density, bend: density * link.slopeTilt(eta) };
};

/** Adds one grade's slope of ln p to the score and minus its second derivatives to the information. */
const addGrade = (given: {
  readonly score: number[];
  readonly information: number[][];
  readonly sides: readonly Side[];
  readonly x: readonly number[];
  readonly cuts: number;
  readonly count: number;
}): void => {
  const { score, information, sides, x, cuts, count } = given;
  const designs = sides.map(({ cut }) => [
    { index: cut, value: 1 },
    ...x.map((value, k) => ({ index: cuts + k, value: -value })),
  ]);
  for (const [s, side] of sides.entries()) {
    for (const one of designs[s] ?? []) {
      score[one.index] = (score[one.index] ?? NaN) + count * side.pull * one.value;
    }
    for (const [t, other] of sides.entries()) {
      const curve = side.pull * other.pull - (s === t ? side.bend : 0);
      for (const one of designs[s] ?? []) {
        const line = information[one.index];
        if (line === undefined) continue;
        for (const two of designs[t] ?? []) {
          line[two.index] = (line[two.index] ?? NaN) + count * curve * one.value * two.value;
        }
      }
    }
  }
};

/** P(lower < η ≤ upper), from whichever tail is nearer, so that a grade far out keeps its digits. */
const probabilityBetween = (link: Link, lower: number, upper: number): number => {
  const below = (eta: number): number => (eta === -Infinity ? 0 : link.probability(eta));
  const above = (eta: number): number => (eta === Infinity ? 0 : Math.exp(link.logComplement(eta)));
  if (upper === Infinity) return above(lower);
  return lower > 0 ? above(lower) - above(upper) : below(upper) - below(lower);
};
