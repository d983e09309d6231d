import type { FitAnswer, Recommendation } from '../cutmodel/fitAnswer.ts';
import { settingKey, type Setting } from '../machine/setting.ts';
import type { Standing } from './standing.ts';

/** A speed that may be run and kept, beside the others. */
export interface SpeedOffered {
  readonly kind:
    /** What the standing says: kept already, or one step slower until checked. */
    | 'run'
    /** The fastest that holds. */
    | 'holds'
    | 'surer';
  readonly setting: Setting;
  /** What the answer says of it; absent: it was not asked. */
  readonly outOf100Mean?: number;
  readonly surePct?: number;
}

/**
 * The speeds to choose from, the one that the standing names first among equals: it is the headline, the chosen row, what
 * the button keeps. Fastest first; none faster than the answer holds.
 */
export const speedsBeside = (
  { recommended, oneStepSurer }: Pick<FitAnswer, 'recommended' | 'oneStepSurer'>,
  { run }: Pick<Standing, 'run'>,
): readonly SpeedOffered[] => {
  const offered: readonly SpeedOffered[] = [
    ...(recommended === null ? [] : [offer('holds', recommended, run)]),
    ...(recommended === null || oneStepSurer === undefined
      ? []
      : [
          offer(
            'surer',
            {
              ...recommended,
              speedMmPerS: oneStepSurer.speedMmPerS,
              outOf100Mean: oneStepSurer.outOf100Mean,
              sureAtSpeedPct: oneStepSurer.sureOfPromisePct,
            },
            run,
          ),
        ]),
  ];
  const isAmong =
    run === undefined || offered.some(({ setting }) => settingKey(setting) === settingKey(run));
  const all: readonly SpeedOffered[] = isAmong
    ? offered
    : [{ kind: 'run', setting: run }, ...offered];
  return [...all].sort((a, b) => b.setting.speedMmPerS - a.setting.speedMmPerS);
};

/** Air and power in corners as the standing has them: the answer asks about neither. */
const offer = (
  kind: SpeedOffered['kind'],
  { powerPct, speedMmPerS, passes, outOf100Mean, sureAtSpeedPct }: Recommendation,
  run: Setting | undefined,
): SpeedOffered => ({
  kind,
  setting: { ...(run?.powerPct === powerPct ? run : {}), powerPct, speedMmPerS, passes },
  outOf100Mean,
  surePct: sureAtSpeedPct,
});
