import type { Setting } from '../machine/setting.ts';
import { nearestStep, stepNotFaster, stepNotSlower } from '../machine/speedSteps.ts';
import type { CardRequest } from './cardRequest.ts';
import { slowestAllowed } from './ceiling.ts';

/** How far below the changeover, in ln speed, equal powers surely come out: then what hangs, hangs by its corners. */
const clearBelow = { least: 0.18, sds: 1.2, most: 0.7 };

/** The least power in corners that a card tries, as a share of the power at full speed. Common practice, no source. */
const leastShare = 0.3;

/** The one speed of a card that varies the power in corners: the wish, else well below the believed changeover. */
export const cornersSpeed = (request: CardRequest): number => {
  const { v50MmPerS, lnSd } = request.believed(request.powerPct);
  const [least, most] = request.machine.speedRangeMmPerS;
  const below = Math.min(clearBelow.most, Math.max(clearBelow.least, clearBelow.sds * lnSd));
  const slowest = Math.max(least, slowestAllowed(request.powerPct, 1, request.believed));
  const wanted = request.speedMmPerS ?? v50MmPerS * Math.exp(-below);
  return Math.min(stepNotFaster(most), Math.max(stepNotSlower(slowest), nearestStep(wanted)));
};

/** Whole per cents from the power at full speed down, even in their logarithm; each there once. */
export const cornersLadder = (request: CardRequest, count: number): readonly Setting[] => {
  const { powerPct } = request;
  const speedMmPerS = cornersSpeed(request);
  const steps = Math.max(1, count - 1);
  const powers = Array.from({ length: count }, (_, i) =>
    Math.max(1, Math.round(powerPct * leastShare ** (i / steps))),
  );
  return [...new Set(powers)].map((minPowerPct) => ({
    powerPct,
    ...(minPowerPct < powerPct ? { minPowerPct } : {}),
    speedMmPerS,
    passes: 1,
    ...(request.air === undefined ? {} : { air: request.air }),
  }));
};
