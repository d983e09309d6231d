import type { ProvenSetting } from '../core/book/provenSetting.ts';
import { rememberNewest } from '../core/cutmodel/rememberNewest.ts';
import type { CutStudy } from '../core/cutmodel/cutStudy.ts';
import type { FitAnswer } from '../core/cutmodel/fitAnswer.ts';
import { done, type Outcome } from '../core/problem.ts';
import { evidenceFrom, needsAnswer } from '../core/standing/evidenceFrom.ts';
import type { Standing } from '../core/standing/standing.ts';
import { standingOf } from '../core/standing/standingOf.ts';
import { answerWithEarlier } from '../core/study/answerWithEarlier.ts';
import type { EarlierSheet } from '../core/study/earlierSheet.ts';
import { historyWishOf } from '../core/study/historyWish.ts';
import { promiseOf } from '../core/study/promiseOf.ts';
import type { Aim, RecordedTally, Study } from '../core/study/study.ts';
import { toCutStudy } from '../core/study/toCutStudy.ts';
import { historyIn } from './gatherHistory.ts';
import type { ReadSession } from './ports.ts';
import { refuse } from './refuse.ts';
import { stripsOfEntry, type StripJudged } from './stripsOfEntry.ts';

/** A proven setting with the orders cut by it, and how it stands. */
export interface EntryStanding {
  readonly entry: ProvenSetting;
  readonly tallies: readonly RecordedTally[];
  readonly standing: Standing;
}

/**
 * How a kept setting stands, from all that is stored of it: the one verb by which book, label, bed, table and program say
 * it. Milliseconds where nothing was said since it was kept, else an answer and a fit for each of its newest strips.
 */
export const withStanding = async (
  session: ReadSession,
  entry: ProvenSetting,
): Promise<EntryStanding> => {
  const { tallies, standing } = await knownOf(session, entry);
  return { entry, tallies, standing };
};

/** The same with the strips that were looked at. */
export const knownOf = async (
  session: ReadSession,
  entry: ProvenSetting,
): Promise<EntryStanding & { readonly strips: readonly StripJudged[] }> => {
  const tallies = await session.talliesOfEntry(entry.id);
  const study = (await session.studyAsReadable(entry.cameFrom.studyId))?.study;
  const promise = promiseOf({ promise: entry.promise, tallies });
  const strips = await stripsOfEntry(session, entry, promise);
  const answer =
    study !== undefined && needsAnswer(study, entry)
      ? await answerAt(session, study, entry.setting.powerPct)
      : undefined;
  const known = {
    kept: entry,
    tallies,
    strips,
    ...(study === undefined ? {} : { study }),
    ...(answer === undefined ? {} : { answer }),
  };
  return { entry, tallies, strips, standing: standingOf(evidenceFrom(known)) };
};

/** What the sheet's cards and orders say now, at one power. */
const answerAt = async (
  session: ReadSession,
  study: Study,
  powerPct: number,
): Promise<FitAnswer> => {
  const earlier = await historyIn(session, historyWishOf(study));
  return answerOf({ cut: { ...toCutStudy(study), ask: { powerPct } }, aim: study.aim, earlier });
};

interface AnswerQuestion {
  readonly cut: CutStudy;
  readonly aim: Aim;
  readonly earlier: readonly EarlierSheet[];
}

const answerOf = rememberNewest(({ cut, aim, earlier }: AnswerQuestion): FitAnswer =>
  answerWithEarlier(cut, aim, earlier),
);

/** By id or by label code. Refuses: `entry-not-found`. */
export const findEntry = async (
  session: ReadSession,
  idOrCode: string,
): Promise<Outcome<ProvenSetting>> => {
  const entry = await session.entry(idOrCode);
  return entry === undefined ? refuse('entry-not-found', { id: idOrCode }) : done(entry);
};
