import type { BelievedChangeover } from '../card/cardRequest.ts';
import { energyCeiling, energyRatio } from '../card/ceiling.ts';
import { firingProblem } from '../card/firingLimits.ts';
import type { CutStudy } from '../cutmodel/cutStudy.ts';
import type { Fit } from '../cutmodel/fit.ts';
import { levelAt } from '../cutmodel/levelAt.ts';
import type { Setting } from '../machine/setting.ts';
import { problemOf, type Problem, type ProblemOf } from '../problem.ts';
import type { FiringCode } from '../problems/firing.ts';
import { thinkableFrom } from './believedChangeover.ts';

/**
 * Why nothing is foretold of a setting that is said by itself, to be proved, ordered by, watched, kept or planned with: it goes
 * beyond machine or range of speed, or has far more line energy than the sheet is believed to bear. undefined: nothing is against
 * it. Who says a setting may know the machine better than the tool does: the ceiling is raised by one standard deviation of what is
 * not known of the changeover, and what was cut already with as much line energy is no news. Overdrive is a person's choice.
 */
export const settingHeldBack = (
  study: CutStudy,
  believed: BelievedChangeover,
  setting: Setting,
): ProblemOf<FiringCode> | undefined => {
  const { powerPct } = setting;
  const ceilingTimes = Math.max(
    energyCeiling * Math.exp(believed(powerPct).lnSd),
    ...settingsCut(study).map((cut) => energyRatio(cut, believed)),
  );
  return firingProblem('setting', setting, {
    machine: study.machine,
    believed,
    ceilingTimes,
    mayOverdrive: true,
  });
};

/** The same where a fit is at hand. */
export const heldBackBy = (fitted: Fit, setting: Setting): ProblemOf<FiringCode> | undefined =>
  settingHeldBack(fitted.study, believedBy(fitted), setting);

/**
 * Whether even the machine's top speed at a power is too slow for the sheet: then there is no card and no first sheet to propose.
 * undefined: it is not.
 */
export const tooStrongAt = (fitted: Fit, powerPct: number): Problem | undefined => {
  const [, mostMmPerS] = fitted.study.machine.speedRangeMmPerS;
  const beyond = heldBackBy(fitted, { powerPct, speedMmPerS: mostMmPerS, passes: 1 });
  return beyond?.code === 'fires-above-ceiling'
    ? problemOf('card-machine-too-strong', { powerPct, mostMmPerS, times: beyond.params.times })
    : undefined;
};

const believedBy = (fitted: Fit): BelievedChangeover => {
  const least = thinkableFrom(fitted.study);
  return (powerPct) => {
    const { mean, sd } = levelAt(fitted, powerPct);
    return { v50MmPerS: Math.exp(mean), lnSd: sd, thinkableFromMmPerS: least(powerPct) };
  };
};

/** A habit is not among them: what a person is used to was not counted here. */
const settingsCut = ({
  cells,
  tallies,
}: CutStudy): readonly Pick<Setting, 'powerPct' | 'speedMmPerS' | 'passes'>[] => [
  ...cells.filter(({ grade }) => grade !== undefined),
  ...tallies.filter(({ out, hangs, stays }) => out + hangs + stays > 0).map((one) => one.setting),
];
