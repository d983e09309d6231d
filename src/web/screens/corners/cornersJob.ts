import { fourCorners, type FourCorners } from '../../../core/bed/fourCorners.ts';
import { scatterUnstudied, type Scatter } from '../../../core/bed/placeEffects.ts';
import { scoringGuess } from '../../../core/card/scoring.ts';
import type { FitAnswer } from '../../../core/cutmodel/fitAnswer.ts';
import { powerLimit } from '../../../core/tube/deliveredPower.ts';
import type { Bed } from '../../../core/machine/machine.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import type { Outcome } from '../../../core/problem.ts';
import { believedChangeover } from '../../../core/study/believedChangeover.ts';
import type { Study } from '../../../core/study/study.ts';
import { toCutStudy } from '../../../core/study/toCutStudy.ts';
import { commonPowerPct } from '../../state/newStudy.ts';

/** What a person may wish of the job; what is absent is filled in from the sheet. */
export interface CornersWish {
  readonly bed: Bed;
  readonly cellsEach: number;
  readonly sizeMm: number;
  readonly marginMm: number;
  readonly setting?: Setting;
  readonly scoring?: Setting;
}

export const usualCornersWish = (study: Study): CornersWish => ({
  bed: study.machine.bed ?? { widthMm: 600, heightMm: 400 },
  cellsEach: 4,
  sizeMm: 14,
  marginMm: 20,
});

/** Two thirds of a normal scatter lie above this many standard deviations below it. */
const twoThirds = 0.43;

export const scatterOf = (answer: FitAnswer | undefined): Scatter =>
  answer === undefined
    ? scatterUnstudied
    : { sigma: answer.posterior.sigma.mean, hangBand: answer.posterior.hangBand.mean };

/** Where about two thirds of the cells should come out, as it would be typed. */
export const suggestedSetting = (study: Study, answer: FitAnswer | undefined): Setting => {
  const limit = powerLimit(study.machine).powerPct;
  const wanted = study.ask.powerPct ?? answer?.posterior.lnV50At.powerPct ?? commonPowerPct;
  const powerPct = Math.min(limit, wanted);
  const { v50MmPerS } = believedChangeover(toCutStudy(study), answer)(powerPct);
  const exact = v50MmPerS * Math.exp(-twoThirds * scatterOf(answer).sigma);
  const [least, most] = study.machine.speedRangeMmPerS;
  const speedMmPerS = Math.min(most, Math.max(least, Number(exact.toPrecision(3))));
  return { powerPct, speedMmPerS, passes: 1 };
};

/** The job as it would be cut. Powers are held to the machine's limit. */
export const cornersJob = (
  study: Study,
  answer: FitAnswer | undefined,
  wish: CornersWish,
): { readonly setting: Setting; readonly job: Outcome<FourCorners> } => {
  const limit = powerLimit(study.machine).powerPct;
  const believed = believedChangeover(toCutStudy(study), answer);
  const held = (setting: Setting): Setting => ({
    ...setting,
    powerPct: Math.min(limit, setting.powerPct),
  });
  const setting = held(wish.setting ?? suggestedSetting(study, answer));
  const scoring = held(
    wish.scoring ??
      scoringGuess({
        believed,
        powerPct: setting.powerPct,
        machine: study.machine,
      }),
  );
  const limits = { machine: study.machine, believed };
  return { setting, job: fourCorners({ ...wish, setting, scoring, shape: 'star', limits }) };
};
