import { energyCeiling } from '../card/ceiling.ts';
import { foresightOf, type TrialRung } from '../cutmodel/foresight.ts';
import type { Fit } from '../cutmodel/fit.ts';
import { levelAt } from '../cutmodel/levelAt.ts';
import { meanSdOf } from '../cutmodel/posterior.ts';
import type { Setting } from '../machine/setting.ts';
import { nearestStep, nextStep, stepNotSlower } from '../machine/speedSteps.ts';

/** A strip has so many cells: they fit in the waste beside the first parts. */
export const stripCells = { least: 4, usual: 6, most: 6 } as const;

/** Where the faster cells begin: part of the way from the proven speed to the believed changeover. */
const beginnings = [0.15, 0.4, 0.65] as const;
/** Where they end, in spreads of the believed changeover beyond it. */
const ends = [0, 0.4, 0.8, 1.2] as const;
const trials = 40;

/**
 * The settings of a check strip: the proven one (on the next speed that people type), then faster ones up to the changeover as it is believed for a batch not
 * cut yet, all at the proven power. Of a dozen ladders the one is taken after which the fastest speed that holds is
 * expected to be highest: it tells most. `found` is a fit of earlier cells with none of this batch. Slowest first, fewer
 * than wished where the machine goes no faster. ~150 ms.
 */
export const stripSettings = (
  fitted: Fit,
  proven: Setting,
  cells: number = stripCells.usual,
): readonly Setting[] => {
  const { study, posterior } = fitted;
  const [least, most] = study.machine.speedRangeMmPerS;
  const level = levelAt(fitted, proven.powerPct);
  const sigma = meanSdOf(posterior, (i) => posterior.sigma[i] ?? NaN).mean;
  const spread = Math.hypot(level.sd, sigma);
  const slowest = Math.max(least, Math.exp(level.mean) / energyCeiling);
  const lnProven = Math.log(proven.speedMmPerS);
  // The changeover lies above the proven speed, or the strip would look where nothing is to be learnt.
  const changeover = Math.max(level.mean, lnProven + sigma);
  const foresight = foresightOf(fitted, [proven.powerPct]);
  const ladders = beginnings.flatMap((part) =>
    ends.map((beyond) => {
      const from = lnProven + part * (changeover - lnProven);
      const to = changeover + beyond * spread;
      return ladder(proven.speedMmPerS, [from, to], cells - 1, [slowest, most]);
    }),
  );
  const judged = ladders.map((speeds) => {
    const card = speeds.map((speedMmPerS): TrialRung => ({
      powerPct: proven.powerPct,
      speedMmPerS,
      cells: 1,
    }));
    return { speeds, lnFastest: foresight.lnFastestAfter(card, trials) };
  });
  const best = judged.reduce((top, one) => (one.lnFastest > top.lnFastest ? one : top));
  return best.speeds.map((speedMmPerS) => ({ ...proven, speedMmPerS }));
};

const ladder = (
  proven: number,
  [from, to]: readonly [number, number],
  faster: number,
  [slowest, fastest]: readonly [number, number],
): readonly number[] => {
  const wanted = Array.from({ length: faster }, (_, i) =>
    nearestStep(
      Math.min(fastest, Math.max(slowest, Math.exp(from + ((to - from) * i) / (faster - 1)))),
    ),
  );
  // Where the steps of the machine are coarse each cell goes to a step of its own.
  const speeds = [stepNotSlower(proven)];
  for (const speed of wanted) {
    const apart = Math.max(speed, nextStep(speeds.at(-1) ?? 0));
    if (apart <= fastest) speeds.push(apart);
  }
  return speeds;
};
