import { describePower } from '../tube/deliveredPower.ts';
import type { Grade } from '../reading/grade.ts';
import type { CellRemark } from './fitAnswer.ts';
import type { Fit } from './fit.ts';
import { gradeProbabilities } from './gradeProbability.ts';
import { thinned } from './posterior.ts';

/**
 * A grade less probable than this asks for a second look. Flaws and misreadings, for which the model allows, keep hardly any
 * grade below it: `bench/mistakes` has one in about 1 in 100 studies without a slip, and seldom finds a wrong tap by it.
 */
const lookAgainBelow = 0.02;
/** A cell whose coming out, or not, was this probable told nothing. */
const toldNothingAbove = 0.95;

/** How probable each grade of each graded cell was, by everything known. */
export type GradeOdds = readonly (Readonly<Record<Grade, number>> | null)[];

/** Enough for a probability of 0.02 good to about 0.005. */
const pointsForOdds = 600;
/** What thousands of cells say leaves so little open that fewer points carry it as well: so many cells times points at most. */
const mostForOdds = 1_000_000;
const leastForOdds = 50;

/** Null where a cell was not graded, or its power says nothing. O(distinct cells · {@link pointsForOdds}). */
export const gradeOdds = ({ study, compiled, posterior: whole }: Fit): GradeOdds => {
  const points = Math.max(
    leastForOdds,
    Math.min(pointsForOdds, Math.floor(mostForOdds / study.cells.length)),
  );
  const posterior = thinned(whole, points);
  const known = new Map<string, Readonly<Record<Grade, number>> | null>();
  return study.cells.map((cell, cellIndex) => {
    if (cell.grade === undefined || cell.spoilt !== undefined) return null;
    const observation = compiled.model.observations[compiled.observationOfCell[cellIndex] ?? -1];
    const key = JSON.stringify({ ...observation, outcome: '', count: 0 });
    let probabilities = known.get(key);
    if (probabilities === undefined) {
      probabilities = gradeProbabilities(compiled, posterior, cellIndex);
      known.set(key, probabilities);
    }
    return probabilities;
  });
};

/** What is to be said of single cells: a second look, told nothing, cut above the tube's rated current. */
export const remarksOn = ({ study }: Fit, odds: GradeOdds): readonly CellRemark[] =>
  study.cells.flatMap((cell, cellIndex): readonly CellRemark[] => {
    const remarks: CellRemark[] = [];
    if (describePower(study.machine, cell.powerPct).overdriven) {
      remarks.push({ cellIndex, kind: 'overdriven', probability: 1 });
    }
    const probabilities = odds[cellIndex];
    if (!probabilities || cell.grade === undefined) return remarks;
    const probability = probabilities[cell.grade];
    const asExpected = cell.grade === 'out' ? probabilities.out : 1 - probabilities.out;
    if (probability < lookAgainBelow) remarks.push({ cellIndex, kind: 'look-again', probability });
    if (asExpected > toldNothingAbove) {
      remarks.push({ cellIndex, kind: 'told-nothing', probability });
    }
    return remarks;
  });
