import type { Setting } from '../machine/setting.ts';
import type { CardRequest } from './cardRequest.ts';

/** A score takes about this share of the line energy that goes through the sheet. */
const scoreShare = 0.15;
/** Many tubes give no steady light below this setting (common practice, no source). */
const leastSteadyPct = 12;

/**
 * A setting to score words with, for a user who has not said what they score a line with: a seventh of the line energy
 * of the believed changeover, as fast as the machine's range allows. A guess, to be tried on scrap first.
 */
export const scoringGuess = (
  request: Pick<CardRequest, 'believed' | 'powerPct' | 'machine' | 'air'>,
): Setting => {
  const powerPct = Math.min(
    request.machine.maxPowerPct,
    Math.max(leastSteadyPct, Math.round(request.powerPct / 2)),
  );
  const [least, most] = request.machine.speedRangeMmPerS;
  const wanted = request.believed(powerPct).v50MmPerS / scoreShare;
  return {
    powerPct,
    speedMmPerS: Math.round(Math.min(most, 150, Math.max(least, wanted))),
    passes: 1,
    ...(request.air === undefined ? {} : { air: request.air }),
  };
};
