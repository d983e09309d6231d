import type { ProvenSetting } from '../../core/book/provenSetting.ts';
import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import { compareMeterings, type CurveChange } from '../../core/metering/compareMeterings.ts';
import type { MachineChange } from '../../core/machine/machineChange.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import { ordersWith } from '../../core/standing/ordersWith.ts';
import type { Standing } from '../../core/standing/standing.ts';
import { historyWishOf } from '../../core/study/historyWish.ts';
import { toCutStudy } from '../../core/study/toCutStudy.ts';
import { batchChanges, type BatchChange } from '../../core/watch/batchChanges.ts';
import {
  machineChangesAmong,
  type MachineChangeOnChart,
} from '../../core/watch/machineChangesAmong.ts';
import { watchedStrip, type CheckStrip } from '../../core/watch/findStrips.ts';
import type { LaserOrWood } from '../../core/watch/laserOrWood.ts';
import type { StripVerdict } from '../../core/watch/stripVerdict.ts';
import { watchChart, type WatchChart } from '../../core/watch/watchChart.ts';
import { watchedOrder } from '../../core/watch/watched.ts';
import { whatToLookAt, type LookAt } from '../../core/watch/whatToLookAt.ts';
import { findEntry, judged, readKept } from '../shared/entryStanding.ts';
import { historyIn } from '../shared/history.ts';
import type { QuestionOf } from '../sums/model.ts';
import type { AskingPorts, ReadSession } from '../ports/ports.ts';
import type { KeptQuestion, StripJudged } from '../sums/standingAsKnown.ts';

/** Whether a proven setting still holds, and if not, why. */
export interface EntryWatched {
  readonly standing: Standing;
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

/** Fewer read cells than this in a strip say too little of a cause. */
const leastCells = 4;

/**
 * Watches one entry of the book: the chart over its orders and strips, what each strip says, and whether laser or wood
 * has changed. Refuses: `entry-not-found`, what `acceptMaterial` and `Model` refuse. ~0.3 s for each of the two newest strips.
 */
export const watchEntry = async (
  { store, model }: Pick<AskingPorts, 'store' | 'model'>,
  idOrCode: string,
): Promise<Outcome<EntryWatched>> => {
  const read = await store.read((session) => toWatch(session, idOrCode));
  if (!read.ok) return read;
  const { kept, cause: causeAsked, meter, changes } = read.value;
  const { kept: entry, tallies } = kept;
  const { strips, standing } = await judged(model, kept);
  const watched = [
    ...ordersWith(entry.setting, tallies).flatMap(watchedOrder),
    ...strips.flatMap(({ strip }) => watchedStrip(strip, entry.setting)),
  ].sort((a, b) => later(a.at, b.at));
  const chart = watchChart(entry, watched);
  const shown = strips.filter(
    ({ verdict }, place) => verdict.kind !== 'unread' || place < mostShown,
  );
  const cause =
    causeAsked === undefined
      ? undefined
      : await model.ask('laserOrWood', causeAsked, entry.cameFrom.studyId);
  if (cause?.ok === false) return cause;
  const amiss =
    chart.standing === 'alarm' ||
    standing.kind === 'failed' ||
    shown.some(({ verdict }) => verdict.kind === 'cut-a-card' || isSlower(verdict));
  const pointsAt = cause?.value.pointsAt ?? 'unclear';
  return done({
    standing,
    chart,
    batchChanges: batchChanges(chart.points, entry.holdsFor.batch),
    machineChanges: machineChangesAmong(chart.points, changes, entry.keptAt),
    strips: shown,
    ...(cause === undefined ? {} : { cause: cause.value }),
    looks: cause !== undefined || amiss ? whatToLookAt(pointsAt, meter) : [],
  });
};

/** All that is stored of what is watched. */
interface ToWatch {
  readonly kept: KeptQuestion;
  readonly cause?: QuestionOf<'laserOrWood'>;
  readonly meter?: CurveChange['how'];
  readonly changes: readonly MachineChange[];
}

const toWatch = async (session: ReadSession, idOrCode: string): Promise<Outcome<ToWatch>> => {
  const found = await findEntry(session, idOrCode);
  if (!found.ok) return found;
  const entry = found.value;
  const accepted = acceptMaterial(entry.holdsFor);
  if (!accepted.ok) return accepted;
  const kept = await readKept(session, entry);
  const cause = await causeAsked(session, kept);
  const meter = await meterChange(session, entry);
  return done({
    kept,
    changes: (await machineOf(session, entry))?.changes ?? [],
    ...(cause === undefined ? {} : { cause }),
    ...(meter === undefined ? {} : { meter }),
  });
};

/** Strips that are shown although nobody read them. */
const mostShown = 4;

const isSlower = (verdict: StripVerdict): boolean =>
  verdict.kind === 'retune' && verdict.which === 'slower';

const later = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

const causeAsked = async (
  session: ReadSession,
  { kept: entry, strips }: KeptQuestion,
): Promise<QuestionOf<'laserOrWood'> | undefined> => {
  const read = strips.filter(({ question }) => question !== undefined);
  const newest = (of: CheckStrip['of']): CheckStrip | undefined =>
    read.find(({ strip }) => strip.of === of && strip.cells.length >= leastCells)?.strip;
  const [reference, newBatch] = [newest('reference'), newest('new-batch')];
  const origin = await session.study(entry.cameFrom.studyId);
  if (reference === undefined || newBatch === undefined || origin === undefined) return undefined;
  // The strips are what is judged: they are no history of themselves.
  const ofStrips = strips.map(({ strip }) => `${strip.studyId}/`);
  const earlier = (await historyIn(session, historyWishOf(origin.study))).filter(
    ({ batch }) => !ofStrips.some((prefix) => batch.startsWith(prefix)),
  );
  const cut: CutStudy = {
    ...toCutStudy(origin.study),
    ask: { powerPct: entry.setting.powerPct },
  };
  return { cut, earlier, strips: { reference: reference.cells, newBatch: newBatch.cells } };
};

const machineOf = (session: ReadSession, { holdsFor }: ProvenSetting) =>
  holdsFor.machineId === undefined ? undefined : session.machine(holdsFor.machineId);

/** How the tube's curve moved between the two last meterings of the machine, where they can be held against each other. */
const meterChange = async (
  session: ReadSession,
  { holdsFor }: ProvenSetting,
): Promise<CurveChange['how'] | undefined> => {
  const own = (await session.machineTests('metering')).filter(
    ({ machineId }) => machineId === holdsFor.machineId,
  );
  const [now, before] = own;
  if (now === undefined || before === undefined) return undefined;
  const change = compareMeterings(before, now);
  return change.ok ? change.value.how : undefined;
};
