import { oneStepFaster, oneStepSurer } from '../cutmodel/answerSpeed.ts';
import type { StudyCell } from '../cutmodel/cutStudy.ts';
import type { Fit } from '../cutmodel/fit.ts';
import { knownPower } from '../cutmodel/knownPower.ts';
import type { Observation } from '../cutmodel/model.ts';
import type { Grade } from '../reading/grade.ts';
import { referenceLengthMm } from '../reading/promise.ts';
import type { NextCellChange } from './explanation.ts';
import { readingProbability } from './readingProbability.ts';
import { reweighed } from './reweigh.ts';
import { speedFrom, type Baseline } from './speedFrom.ts';

/** Most speeds that are looked at. */
const mostSpeeds = 9;

/**
 * What one more cell of this sheet would do to the answer: one step slower than it, at it, and step by step faster up to
 * the fastest that was cut.
 */
export const nextCells = (fitted: Fit, baseline: Baseline): readonly NextCellChange[] =>
  speedsAbout(fitted, baseline.speedMmPerS).map((speedMmPerS) => ({
    powerPct: baseline.powerPct,
    speedMmPerS,
    after: {
      out: afterOne(fitted, baseline, speedMmPerS, 'out'),
      hangs: afterOne(fitted, baseline, speedMmPerS, 'hangs'),
      stays: afterOne(fitted, baseline, speedMmPerS, 'stays'),
    },
  }));

const speedsAbout = ({ study, evidence }: Fit, at: number): readonly number[] => {
  const [least, most] = study.machine.speedRangeMmPerS;
  const fastest = Math.min(most, Math.max(evidence.fastestMmPerS ?? 0, 1.1 * at));
  const speeds = [oneStepSurer(at), at].filter((speed) => speed >= least);
  let next = oneStepFaster(at);
  while (next <= fastest && speeds.length < mostSpeeds) {
    speeds.push(next);
    next = oneStepFaster(next);
  }
  return [...new Set(speeds)];
};

const afterOne = (
  fitted: Fit,
  baseline: Baseline,
  speedMmPerS: number,
  grade: Grade,
): NextCellChange['after'][Grade] => {
  const { compiled, study } = fitted;
  const { powerPct, posterior, fits } = baseline;
  const cut = oneMore(fitted, powerPct, speedMmPerS, grade);
  const odds = readingProbability(posterior, cut);
  const probability = odds.reduce((sum, odd, i) => sum + odd * (posterior.weight[i] ?? NaN), 0);
  const air = study.cells.at(-1)?.air;
  const cell: StudyCell = {
    powerPct,
    speedMmPerS,
    passes: 1,
    grade,
    ...(air === undefined ? {} : { air }),
  };
  const more = { ...study, cells: [...study.cells, cell] };
  const weighed = reweighed(posterior, odds.map(Math.log));
  const observations = [...compiled.model.observations, cut];
  const by = weighed.isReliable ? 'weights' : fits.take(1) ? 'fit' : 'rough-weights';
  const { speedMmPerS: then } = speedFrom(
    fitted,
    baseline,
    by === 'fit'
      ? { study: more, posterior: fits.fit({ ...compiled.model, observations }) }
      : { study: more, posterior: weighed.posterior, isSmoothed: true },
  );
  return { probability, speedMmPerS: then, by };
};

/** One reference shape on the sheet that was cut last. */
const oneMore = (
  { compiled }: Fit,
  powerPct: number,
  speedMmPerS: number,
  outcome: Grade,
): Observation => ({
  outcome,
  count: 1,
  lnSpeed: Math.log(speedMmPerS),
  lnPower: knownPower(compiled, powerPct).lnPower,
  lnThickness: 0,
  lnPasses: 0,
  lnCorners: 0,
  lengths: 1,
  lengthM: referenceLengthMm / 1000,
  counted: false,
  ...compiled.current,
});
