import type { EdgeAnswer, FitAnswer, Recommendation } from '../cutmodel/fitAnswer.ts';
import { settingKey, type Setting } from '../machine/setting.ts';
import type { Standing } from './standing.ts';

/** A speed that may be run and kept, beside the others. */
export interface SpeedOffered {
  readonly kind:
    /** What the standing says: kept already, or one step slower until checked. */
    | 'run'
    /** The fastest that holds. */
    | 'holds'
    | 'surer'
    /** The one that is preferred for its edge. */
    | 'edge';
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
  { recommended, oneStepSurer, edge }: Pick<FitAnswer, 'recommended' | 'oneStepSurer' | 'edge'>,
  { run, kind }: Pick<Standing, 'run'> & Partial<Pick<Standing, 'kind'>>,
): readonly SpeedOffered[] => {
  const byEdge = kind === 'failed' ? [] : edgeOffer(recommended, edge, run);
  const others: readonly SpeedOffered[] = [
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
  // One setting is one row: what is said of its edge comes on top of what makes it surer.
  const isOther = ({ setting }: SpeedOffered): boolean =>
    byEdge.every((one) => settingKey(one.setting) !== settingKey(setting));
  const offered = [...others.filter(isOther), ...byEdge];
  const isAmong =
    run === undefined || offered.some(({ setting }) => settingKey(setting) === settingKey(run));
  const all: readonly SpeedOffered[] = isAmong
    ? offered
    : [{ kind: 'run', setting: run }, ...offered];
  return [...all].sort((a, b) => b.setting.speedMmPerS - a.setting.speedMmPerS);
};

const edgeOffer = (
  recommended: Recommendation | null,
  edge: EdgeAnswer | undefined,
  run: Setting | undefined,
): readonly SpeedOffered[] => {
  const preferred = edge?.preferred;
  if (recommended === null || preferred === undefined) return [];
  const { powerPct, speedMmPerS, outOf100Mean, sureOfPromisePct } = preferred;
  const promised = { outOf100Mean, sureAtSpeedPct: sureOfPromisePct };
  return [offer('edge', { ...recommended, powerPct, speedMmPerS, ...promised }, run)];
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
