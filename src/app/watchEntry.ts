import type { ProvenSetting } from '../core/book/provenSetting.ts';
import type { CutStudy } from '../core/cutmodel/cutStudy.ts';
import { compareMeterings, type CurveChange } from '../core/machine/compareMeterings.ts';
import { done, type Outcome } from '../core/problem.ts';
import { acceptMaterial } from '../core/stock/acceptMaterial.ts';
import { sameMaterialAs } from '../core/stock/sameMaterial.ts';
import { fitWithEarlier } from '../core/study/answerWithEarlier.ts';
import type { EarlierSheet } from '../core/study/earlierSheet.ts';
import { historyWishOf } from '../core/study/historyWish.ts';
import type { Study } from '../core/study/study.ts';
import { toCutStudy } from '../core/study/toCutStudy.ts';
import { batchChanges, type BatchChange } from '../core/watch/batchChanges.ts';
import {
  machineChangesAmong,
  type MachineChangeOnChart,
} from '../core/watch/machineChangesAmong.ts';
import { stripsIn, watchedStrip, type CheckStrip } from '../core/watch/findStrips.ts';
import { laserOrWood, type LaserOrWood } from '../core/watch/laserOrWood.ts';
import { stripVerdict, type StripVerdict } from '../core/watch/stripVerdict.ts';
import { watchChart, type WatchChart } from '../core/watch/watchChart.ts';
import { watchedOrder } from '../core/watch/watched.ts';
import { whatToLookAt, type LookAt } from '../core/watch/whatToLookAt.ts';
import { findEntry } from './entryWithTallies.ts';
import { historyIn } from './gatherHistory.ts';
import type { Ports, ReadSession } from './ports.ts';

export interface StripJudged {
  readonly strip: CheckStrip;
  readonly verdict: StripVerdict;
}

/** Whether a proven setting still holds, and if not, why. */
export interface EntryWatched {
  readonly chart: WatchChart;
  /** Where another batch was cut from. */
  readonly batchChanges: readonly BatchChange[];
  /** Where something was changed on the machine. */
  readonly machineChanges: readonly MachineChangeOnChart[];
  /** The last read first. */
  readonly strips: readonly StripJudged[];
  /** Where the last strips of both kinds were read, and what was cut before is still there. */
  readonly cause?: LaserOrWood;
  /** What to look at, cheapest first: where something is amiss. */
  readonly looks: readonly LookAt[];
}

/** Studies that are opened to look for strips, the last touched first. */
const mostStudies = 30;
/** Fewer read cells than this in a strip say too little of a cause. */
const leastCells = 4;

/**
 * Watches one entry of the book: the chart over its orders and strips, what each strip says, and whether laser or wood
 * has changed. Refuses: `entry-not-found`, what `acceptMaterial` refuses. ~0.3 s for each of the two newest strips.
 */
export const watchEntry = (
  { store }: Pick<Ports, 'store'>,
  idOrCode: string,
): Promise<Outcome<EntryWatched>> =>
  store.read(async (session) => {
    const found = await findEntry(session, idOrCode);
    if (!found.ok) return found;
    const entry = found.value;
    const accepted = acceptMaterial(entry.holdsFor);
    if (!accepted.ok) return accepted;
    const studies = await laterStudies(session, entry);
    const strips = studies
      .flatMap((study) => stripsIn(study, entry).map((strip) => ({ study, strip })))
      .sort((a, b) => later(b.strip.at, a.strip.at));
    const tallies = await session.talliesOfEntry(entry.id);
    const watched = [
      ...tallies.flatMap(watchedOrder),
      ...strips.flatMap(({ strip }) => watchedStrip(strip, entry.setting)),
    ].sort((a, b) => later(a.at, b.at));
    const chart = watchChart(entry, watched);
    const judged: StripJudged[] = [];
    for (const { study, strip } of strips.slice(0, mostJudged)) {
      const earlier = await historyIn(session, historyWishOf(study));
      judged.push({ strip, verdict: verdictOf(study, strip, entry, earlier) });
    }
    const cause = await causeOf(session, entry, judged);
    const amiss =
      chart.standing === 'alarm' ||
      judged.some(({ verdict }) => verdict.kind === 'cut-a-card' || isSlower(verdict));
    const pointsAt = cause?.pointsAt ?? 'unclear';
    const looks =
      cause !== undefined || amiss ? whatToLookAt(pointsAt, await meterChange(session, entry)) : [];
    return done({
      chart,
      batchChanges: batchChanges(chart.points, entry.holdsFor.batch),
      machineChanges: machineChangesAmong(
        chart.points,
        (await machineOf(session, entry))?.changes ?? [],
        entry.keptAt,
      ),
      strips: judged,
      ...(cause === undefined ? {} : { cause }),
      looks,
    });
  });

/** Older strips stand on the chart; nobody acts on them any more. */
const mostJudged = 4;

const isSlower = (verdict: StripVerdict): boolean =>
  verdict.kind === 'retune' && verdict.which === 'slower';

const later = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

/** Studies of the same material on the same machine that were begun since the setting was kept. */
const laterStudies = async (
  session: ReadSession,
  entry: ProvenSetting,
): Promise<readonly Study[]> => {
  const all = (await session.summaries()).filter(({ isExample }) => isExample === entry.isExample);
  const isSame = sameMaterialAs(entry.holdsFor.material);
  const fitting = all.filter(
    (one) =>
      one.id !== entry.cameFrom.studyId &&
      one.createdAt >= entry.keptAt &&
      isSame(one.stock.material) &&
      one.machineId === entry.holdsFor.machineId,
  );
  const studies: Study[] = [];
  for (const { id } of fitting.slice(0, mostStudies)) {
    const found = await session.study(id);
    if (found !== undefined) studies.push(found.study);
  }
  return studies;
};

/** The study as the strip's own cells alone: what else it holds is evidence of it too, but not of the strip. */
const verdictOf = (
  study: Study,
  strip: CheckStrip,
  entry: ProvenSetting,
  earlier: readonly EarlierSheet[],
): StripVerdict => {
  const cut: CutStudy = {
    ...toCutStudy(study),
    cells: strip.cells,
    promise: { ...entry.promise, for: 'batch' },
    ask: { powerPct: entry.setting.powerPct },
  };
  return stripVerdict(fitWithEarlier(cut, earlier), entry.setting, strip.of === 'new-batch');
};

const causeOf = async (
  session: ReadSession,
  entry: ProvenSetting,
  judged: readonly StripJudged[],
): Promise<LaserOrWood | undefined> => {
  const newest = (of: CheckStrip['of']): CheckStrip | undefined =>
    judged.find(({ strip }) => strip.of === of && strip.cells.length >= leastCells)?.strip;
  const [reference, newBatch] = [newest('reference'), newest('new-batch')];
  const origin = await session.study(entry.cameFrom.studyId);
  if (reference === undefined || newBatch === undefined || origin === undefined) return undefined;
  // The strips are what is judged: they are no history of themselves.
  const ofStrips = judged.map(({ strip }) => `${strip.studyId}/`);
  const earlier = (await historyIn(session, historyWishOf(origin.study))).filter(
    ({ batch }) => !ofStrips.some((prefix) => batch.startsWith(prefix)),
  );
  const cut: CutStudy = {
    ...toCutStudy(origin.study),
    ask: { powerPct: entry.setting.powerPct },
  };
  return laserOrWood(fitWithEarlier(cut, earlier), {
    reference: reference.cells,
    newBatch: newBatch.cells,
  });
};

const machineOf = (session: ReadSession, { holdsFor }: ProvenSetting) =>
  holdsFor.machineId === undefined ? undefined : session.machine(holdsFor.machineId);

/** How the tube's curve moved between the two last meterings of the machine, where they can be held against each other. */
const meterChange = async (
  session: ReadSession,
  { holdsFor }: ProvenSetting,
): Promise<CurveChange['how'] | undefined> => {
  const own = (await session.meterings()).filter(
    ({ machineId }) => machineId === holdsFor.machineId,
  );
  const [now, before] = own;
  if (now === undefined || before === undefined) return undefined;
  const change = compareMeterings(before, now);
  return change.ok ? change.value.how : undefined;
};
