import { describePower } from '../machine/deliveredPower.ts';
import type { Grade } from '../reading/grade.ts';
import type { CellRemark } from './fitAnswer.ts';
import type { Fit } from './fitStudy.ts';
import { gradeProbabilities } from './gradeProbability.ts';

/** A grade less probable than this asks for a second look. */
const lookAgainBelow = 0.02;
/** A grade that was this probable told nothing. */
const toldNothingAbove = 0.95;

/**
 * What is to be said of single cells: a second look, told nothing, cut above the tube's rated current.
 * O(distinct cells · points).
 */
export const remarksOn = (found: Fit): readonly CellRemark[] => {
  const { study, compiled, posterior } = found;
  const known = new Map<number, Readonly<Record<Grade, number>> | null>();
  return study.cells.flatMap((cell, cellIndex): readonly CellRemark[] => {
    const remarks: CellRemark[] = [];
    if (describePower(study.machine, cell.powerPct).overdriven) {
      remarks.push({ cellIndex, kind: 'overdriven', probability: 1 });
    }
    if (cell.grade === undefined || cell.spoilt !== undefined) return remarks;
    const observation = compiled.observationOfCell[cellIndex] ?? -1;
    let probabilities = known.get(observation);
    if (probabilities === undefined) {
      probabilities = gradeProbabilities(study, compiled, posterior, cellIndex);
      known.set(observation, probabilities);
    }
    if (!probabilities) return remarks;
    const probability = probabilities[cell.grade];
    if (probability < lookAgainBelow) remarks.push({ cellIndex, kind: 'look-again', probability });
    if (probability > toldNothingAbove) {
      remarks.push({ cellIndex, kind: 'told-nothing', probability });
    }
    return remarks;
  });
};
