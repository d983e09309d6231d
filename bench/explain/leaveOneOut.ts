import { decisionOn } from '../../src/core/cutmodel/decisionOn.ts';
import { fit } from '../../src/core/cutmodel/fit.ts';
import { posteriorOf } from '../../src/core/cutmodel/posterior.ts';
import { priors } from '../../src/core/cutmodel/priors.ts';
import { leaveOut, modelWithout } from '../../src/core/explain/leaveOut.ts';
import { baselineAt } from '../../src/core/explain/speedFrom.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { drawCard, drawStudy, drawTruth, isAnswerable } from './drawStudy.ts';

export interface LeaveOneOutAgreement {
  readonly studies: number;
  /** Cells and rungs left out; equal ones once. */
  readonly parts: number;
  /** Of these, by weights alone. */
  readonly byWeightsPct: number;
  /** How far the shift of the speed lies from that of two large fits, in per cent of the speed. */
  readonly medianErrorPct: number;
  readonly p95ErrorPct: number;
  readonly worstErrorPct: number;
  /** How far the shifts lie about 0, to see the errors against. */
  readonly medianShiftPct: number;
  readonly worstShiftPct: number;
}

/** Points of each link of the fits that are held to be right. */
const manyPoints = 8000;

/**
 * Leaves out every cell and every rung of cards of 24 cells, and holds the shift of the speed against that between two
 * fits of many points.
 */
export const measureLeaveOneOut = (studies: number, seed = 1): LeaveOneOutAgreement => {
  const random = seededRandom(seed);
  const found: { readonly error: number; readonly shift: number; readonly by: string }[] = [];
  let done = 0;
  while (done < studies) {
    const cells = drawCard(
      drawTruth(random),
      { cells: 24, batch: '', sheet: 's', batchEffect: 0 },
      random,
    );
    const study = drawStudy(cells);
    if (!isAnswerable(study)) continue;
    done += 1;
    const whole = fit(study);
    const baseline = baselineAt(whole, 30);
    if (baseline === null) continue;
    const fits = { ...baseline.fits, take: () => true };
    const without = leaveOut(whole, { ...baseline, fits });
    const holding = (model: typeof whole.compiled.model): number =>
      decisionOn(
        whole.compiled,
        posteriorOf(model, priors.links, manyPoints),
        study.promise,
      ).fastestHolding(30) ?? Number.NaN;
    const before = holding(whole.compiled.model);
    const parts = [
      ...distinctBy(cells.keys(), (i) => String(whole.compiled.observationOfCell[i])).map((i) => [
        i,
      ]),
      ...distinctBy(cells.keys(), (i) => String(cells[i]?.speedMmPerS)).map((first) =>
        [...cells.keys()].filter((i) => cells[i]?.speedMmPerS === cells[first]?.speedMmPerS),
      ),
    ];
    for (const part of parts) {
      const { holdingShiftPct, by } = without({ cells: part });
      const right = 100 * (holding(modelWithout(whole.compiled, { cells: part })) / before - 1);
      found.push({ error: Math.abs(holdingShiftPct - right), shift: Math.abs(right), by });
    }
  }
  const errors = found.map(({ error }) => error).sort((a, b) => a - b);
  const shifts = found.map(({ shift }) => shift).sort((a, b) => a - b);
  const at = (sorted: readonly number[], p: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))] ?? 0;
  return {
    studies,
    parts: found.length,
    byWeightsPct: (100 * found.filter(({ by }) => by === 'weights').length) / found.length,
    medianErrorPct: at(errors, 0.5),
    p95ErrorPct: at(errors, 0.95),
    worstErrorPct: at(errors, 1),
    medianShiftPct: at(shifts, 0.5),
    worstShiftPct: at(shifts, 1),
  };
};

const distinctBy = (
  items: Iterable<number>,
  keyOf: (item: number) => string,
): readonly number[] => {
  const seen = new Set<string>();
  return [...items].filter((item) => !seen.has(keyOf(item)) && seen.add(keyOf(item)));
};
