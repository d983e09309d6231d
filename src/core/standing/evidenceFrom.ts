import type { ProvenSetting } from '../book/provenSetting.ts';
import type { Setting } from '../machine/setting.ts';
import type { FitAnswer } from '../cutmodel/fitAnswer.ts';
import { progress } from '../reading/progress.ts';
import { readCard } from '../reading/readCard.ts';
import { promiseKept, promiseOf } from '../study/promiseOf.ts';
import type { RecordedTally, Study } from '../study/study.ts';
import { toCutStudy } from '../study/toCutStudy.ts';
import type { CheckStrip } from '../watch/findStrips.ts';
import { watchedStrip } from '../watch/findStrips.ts';
import type { StripVerdict } from '../watch/stripVerdict.ts';
import { watchChart } from '../watch/watchChart.ts';
import { watchedOrder } from '../watch/watched.ts';
import type { AnswerSeen, StandingEvidence, StripSeen } from './evidence.ts';
import { ordersWith } from './ordersWith.ts';
import { reachOf, type Reach } from '../cutmodel/reach.ts';

/** A strip with what it says, as the watch has it. */
export interface StripKnown {
  readonly strip: CheckStrip;
  readonly verdict: StripVerdict;
}

/** A sheet and what was kept of it, as they are stored. At least one of the two. */
export interface StockKnown {
  /** Absent: the sheet that a setting came from was removed. */
  readonly study?: Study;
  /** Absent: nothing was kept of the sheet yet. */
  readonly kept?: ProvenSetting;
  /** Orders of the kept setting. */
  readonly tallies?: readonly RecordedTally[];
  readonly strips?: readonly StripKnown[];
  /** The answer to the study at the power of the kept setting; needed where {@link needsAnswer}. */
  readonly answer?: FitAnswer;
  /** Sums that have a say could not be made. */
  readonly isSumMissing?: boolean;
}

/** What decides how a stock stands, from what is stored of it and what was worked out. */
export const evidenceFrom = (known: StockKnown): StandingEvidence => {
  const { study, kept, answer, strips = [], isSumMissing = false } = known;
  const orders = ordersOf(known);
  const promise = promiseOf({
    promise:
      kept === undefined
        ? (study?.promise ?? noPromise())
        : promiseKept(kept.promise, study?.promise),
    tallies: orders,
  });
  const halfRead = study === undefined ? undefined : halfReadCard(study);
  const reach = reachKnown(known, orders);
  return {
    ...(kept === undefined ? {} : { kept }),
    ...(answer === undefined || (kept !== undefined && !needsAnswer(study, kept))
      ? {}
      : { answer: answerSeen(answer, kept, study) }),
    promise,
    orders,
    strips: stripsSeen(strips),
    ...(halfRead === undefined ? {} : { halfRead }),
    ...(reach === undefined ? {} : { reach }),
    isSumMissing,
    isChartAlarmed: kept !== undefined && isAlarmed(kept, known),
  };
};

/**
 * Whether the answer has a say: nothing was kept, or something was said of the sheet since. What was known when a setting
 * was kept stands in the book already.
 */
export const needsAnswer = (study: Study | undefined, kept: ProvenSetting | undefined): boolean => {
  if (study === undefined) return false;
  if (kept === undefined) return true;
  const since = (at: string): boolean => at > kept.keptAt;
  return study.events.some(({ at }) => since(at)) || study.tallies.some(({ at }) => since(at));
};

/** Cards that are read in part, put together: how far they are. Undefined where each is read whole or not at all. */
export const halfReadCard = (
  study: Pick<Study, 'cards' | 'events'>,
): { readonly read: number; readonly cells: number } | undefined => {
  const half = study.cards
    .map((card) => progress(readCard(card, study.events).cells))
    .filter(({ read, unread }) => read > 0 && unread > 0);
  if (half.length === 0) return undefined;
  return {
    read: half.reduce((sum, { read }) => sum + read, 0),
    cells: half.reduce((sum, { cells }) => sum + cells, 0),
  };
};

const ordersOf = ({ study, kept, tallies = [] }: StockKnown): readonly RecordedTally[] => {
  const own = kept === undefined ? [] : tallies;
  const inStudy = study?.tallies ?? [];
  const known = new Set(inStudy.map(({ id }) => id));
  return [...inStudy, ...own.filter(({ id }) => !known.has(id))].sort((a, b) =>
    a.at < b.at ? -1 : a.at > b.at ? 1 : 0,
  );
};

const noPromise = (): never => {
  throw new Error('a standing was asked of neither a sheet nor a kept setting');
};

/** What of an answer bears on how its sheet stands. */
export const answerSeen = (
  answer: FitAnswer,
  kept: ProvenSetting | undefined,
  study: Study | undefined,
): AnswerSeen => {
  const { recommended, line } = answer;
  const { powerPct, speedMmPerS, passes } = recommended ?? {};
  const staysOpenFrom = staysOpenFromAt(answer, kept?.setting);
  const air = study?.cards.at(-1)?.rungs[0]?.setting.air ?? recommended?.air;
  return {
    recommended:
      powerPct === undefined || speedMmPerS === undefined || passes === undefined
        ? null
        : { powerPct, speedMmPerS, passes, ...(air === undefined ? {} : { air }) },
    isGuess: recommended?.guess ?? false,
    holdsAtKeptMmPerS:
      kept === undefined || recommended === null
        ? null
        : recommended.powerPct === kept.setting.powerPct
          ? recommended.speedMmPerS
          : (line.findLast((point) => point.powerPct <= kept.setting.powerPct + 0.5)?.speedMmPerS ??
            null),
    ...(staysOpenFrom === undefined ? {} : { staysOpenFromMmPerS: staysOpenFrom }),
  };
};

/** What the answer says of welding is of one pass at one power, and says nothing of a setting that was kept at another. */
const staysOpenFromAt = (
  { reason, warnings }: Pick<FitAnswer, 'reason' | 'warnings'>,
  kept: Setting | undefined,
): number | undefined => {
  const [powerPct, fromMmPerS] =
    reason?.code === 'welds-before-it-cuts'
      ? [reason.params.powerPct, reason.params.speedMmPerS]
      : warnings.flatMap((warning) =>
          warning.code === 'welds-back'
            ? [warning.params.powerPct, warning.params.slowestMmPerS]
            : [],
        );
  const isOfKept = kept === undefined || (kept.passes === 1 && kept.powerPct === powerPct);
  return isOfKept ? fromMmPerS : undefined;
};

const stripsSeen = (strips: readonly StripKnown[]): readonly StripSeen[] =>
  strips
    .flatMap(({ strip: { code, at, of }, verdict }): readonly StripSeen[] =>
      verdict.kind === 'unread' ? [] : [{ code, at, of, verdict }],
    )
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));

/** Where the cards went with their sheet, what is kept says at least whether there were any. */
const reachKnown = (
  { study, kept }: StockKnown,
  orders: readonly RecordedTally[],
): Reach | undefined => {
  if (study !== undefined) return reachOf({ ...toCutStudy(study), tallies: orders });
  if (kept === undefined) return undefined;
  const isCut = kept.cameFrom.cellCount > 0 || kept.cameFrom.partsTallied > 0;
  const spots = [...(isCut ? [kept.setting] : []), ...orders.map(({ setting }) => setting)];
  return { cut: spots, out: spots };
};

const isAlarmed = (kept: ProvenSetting, { tallies = [], strips = [] }: StockKnown): boolean => {
  const watched = [
    ...ordersWith(kept.setting, tallies).flatMap((order) => watchedOrder(order)),
    ...strips.flatMap(({ strip }) => watchedStrip(strip, kept.setting)),
  ].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  return watchChart(kept, watched).standing === 'alarm';
};
