import { leastSteadyPct, powerLimit } from '../tube/deliveredPower.ts';
import { nearestStep } from '../machine/speedSteps.ts';
import type { Setting } from '../machine/setting.ts';
import { reachOf } from './ladders.ts';
import type { CardRequest } from './cardRequest.ts';
import { slowestAllowed } from './ceiling.ts';

/** A score takes about this share of the line energy that goes through the sheet. */
const scoreShare = 0.15;
/** And no more than this share of that of the gentlest cell that a ladder reaches: it may be the one that comes out. */
const shareOfGentlest = 0.4;
/** Faster marks tend to shake, mm/s (common practice, no source). */
const steadyHandMmPerS = 150;

/**
 * A setting to score words with, for a user who has not said what they score a line with: a seventh of the line energy
 * of the believed changeover, at half the power asked for; with less power where the machine goes no faster, and faster than
 * a steady hand where the tube goes no lower. A guess, to be tried on scrap first; on thin stock it may still come through
 * (`firingProblem` says so).
 */
export const scoringGuess = ({
  believed,
  powerPct: asked,
  machine,
  air,
}: Pick<CardRequest, 'believed' | 'powerPct' | 'machine' | 'air'>): Setting => {
  const [least, most] = machine.speedRangeMmPerS;
  const shareAt = (powerPct: number): number =>
    Math.min(scoreShare, shareOfGentlest * Math.exp(-reachOf(believed(powerPct).lnSd)));
  const wantedAt = (powerPct: number): number =>
    slowestAllowed(powerPct, 1, believed, shareAt(powerPct));
  const lowest = leastSteadyPct(machine);
  const usual = Math.min(powerLimit(machine).powerPct, Math.max(lowest, Math.round(asked / 2)));
  const steady = Math.min(most, steadyHandMmPerS);
  const powerPct =
    wantedAt(usual) <= steady
      ? usual
      : Math.max(lowest, Math.floor((usual * steady) / wantedAt(usual)));
  const fastest = wantedAt(powerPct) <= 1.5 * steady ? steady : most;
  return {
    powerPct,
    speedMmPerS: typedSpeed(Math.min(fastest, Math.max(least, wantedAt(powerPct)))),
    passes: 1,
    ...(air === undefined ? {} : { air }),
  };
};

/** Whole mm/s, as people type a speed to score with; slow ones to a tenth. */
const typedSpeed = (speedMmPerS: number): number =>
  speedMmPerS < 5 ? nearestStep(speedMmPerS) : Math.round(speedMmPerS);
