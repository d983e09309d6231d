import { overdriveRemarks } from '../../core/card/overdriveRemarks.ts';
import { overdrives } from '../../core/card/firingLimits.ts';
import { fit } from '../../core/cutmodel/fit.ts';
import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import { answerFrom } from '../../core/cutmodel/fitStudy.ts';
import { done, problemOf, refused, type Outcome, type Problem } from '../../core/problem.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import { heldBackBy } from '../../core/study/settingHeldBack.ts';
import { batchChanges, type BatchChange } from '../../core/watch/batchChanges.ts';
import { watchedStrip, type CheckStrip } from '../../core/watch/findStrips.ts';
import { laserOrWood, type LaserOrWood } from '../../core/watch/laserOrWood.ts';
import { stripSettings } from '../../core/watch/stripSettings.ts';
import { stripVerdict, type StripVerdict } from '../../core/watch/stripVerdict.ts';
import { watchChart, type WatchChart } from '../../core/watch/watchChart.ts';
import { watchedOrder, type Foreseen } from '../../core/watch/watched.ts';
import { whatToLookAt, type LookAt } from '../../core/watch/whatToLookAt.ts';
import type { Setting } from '../../core/machine/setting.ts';
import type { WatchFile } from '../../formats/watchFile.ts';

export interface WatchedByFile {
  readonly foreseen: Foreseen;
  readonly chart: WatchChart;
  /** Where another batch was cut from. */
  readonly batchChanges: readonly BatchChange[];
  readonly strips: readonly { readonly strip: CheckStrip; readonly verdict: StripVerdict }[];
  readonly cause?: LaserOrWood;
  readonly looks: readonly LookAt[];
  /** The strip to cut in the next new batch, where the study says; none that drives the tube above its rated current. */
  readonly nextStrip?: readonly Setting[];
  /** What is to be said of the material that the study names. */
  readonly ofMaterial: readonly Problem[];
}

/**
 * Watches a setting by a file alone; nothing is stored. The study's cells are the history of every strip. Refuses:
 * what `acceptMaterial` refuses, a setting that the study’s machine or sheet do not bear, `no-forecast-to-keep` where nothing says what was foreseen. ~0.2 s a strip.
 */
export const watchByFile = (file: WatchFile): Outcome<WatchedByFile> => {
  const accepted = file.study === undefined ? done([]) : acceptMaterial(file.study.stock);
  if (!accepted.ok) return accepted;
  const { powerPct } = file.setting;
  const beyond = file.study && heldBackBy(fit({ ...file.study, ask: { powerPct } }), file.setting);
  if (beyond !== undefined) return { ok: false, problem: beyond };
  const foreseen = foreseenBy(file);
  if (foreseen === undefined) return refused('no-forecast-to-keep');
  const strips = file.strips.map((strip, i): CheckStrip => ({
    studyId: 'file',
    code: `strip ${String(i + 1)}`,
    cellCount: strip.cells.length,
    ...strip,
  }));
  const watched = [
    ...file.orders.flatMap((order, i) => watchedOrder({ ...order, id: `order ${String(i + 1)}` })),
    ...strips.flatMap((strip) => watchedStrip(strip, file.setting)),
  ].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  const chart = watchChart(foreseen, watched);
  const judged = strips.map((strip) => ({ strip, verdict: verdictOf(file, strip) }));
  const cause = causeOf(file, strips);
  const isAmiss = chart.standing === 'alarm' || cause !== undefined;
  return done({
    ofMaterial: [
      ...accepted.value,
      ...(file.study === undefined ? [] : overdriveRemarks([file.setting], file.study.machine)),
      ...(file.setting.air === 'off' ? [problemOf('air-off-burns')] : []),
    ],
    foreseen,
    chart,
    batchChanges: batchChanges(chart.points),
    strips: judged,
    ...(cause === undefined ? {} : { cause }),
    looks: isAmiss ? whatToLookAt(cause?.pointsAt ?? 'unclear', file.meter) : [],
    ...(file.study === undefined || overdrives(file.study.machine, file.setting)
      ? {}
      : { nextStrip: stripSettings(fit(before(file, file.study)), file.setting) }),
  });
};

const foreseenBy = ({ setting, promise, foreseen, study }: WatchFile): Foreseen | undefined => {
  if (foreseen !== undefined) return { setting, promise, ...foreseen };
  if (study === undefined) return undefined;
  const { powerPct, speedMmPerS } = setting;
  const { asked } = answerFrom(fit({ ...study, promise, ask: { powerPct, speedMmPerS } }));
  return asked === undefined || !Number.isFinite(asked.outOf100Mean)
    ? undefined
    : { setting, promise, outOf100Mean: asked.outOf100Mean, surePct: asked.sureOfPromisePct };
};

/** What is known of a sheet that nothing was cut from yet. */
const before = ({ setting, promise }: WatchFile, study: CutStudy): CutStudy => ({
  ...study,
  cells: [],
  tallies: [],
  history: study.cells,
  promise: { ...promise, for: 'batch' },
  ask: { powerPct: setting.powerPct },
});

const verdictOf = (file: WatchFile, { of, cells }: CheckStrip): StripVerdict =>
  file.study === undefined
    ? { kind: 'unread' }
    : stripVerdict(fit({ ...before(file, file.study), cells }), file.setting, of === 'new-batch');

const causeOf = (
  { study, setting }: WatchFile,
  strips: readonly CheckStrip[],
): LaserOrWood | undefined => {
  const newest = (of: CheckStrip['of']) => strips.findLast((strip) => strip.of === of);
  const [reference, newBatch] = [newest('reference'), newest('new-batch')];
  if (reference === undefined || newBatch === undefined || study === undefined) return undefined;
  return laserOrWood(fit({ ...study, ask: { powerPct: setting.powerPct } }), {
    reference: reference.cells,
    newBatch: newBatch.cells,
  });
};
