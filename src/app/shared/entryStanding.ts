import { onlyByAir } from '../../core/book/onlyByAir.ts';
import type { ProvenSetting } from '../../core/book/provenSetting.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { needsAnswer } from '../../core/standing/evidenceFrom.ts';
import type { Standing } from '../../core/standing/standing.ts';
import { historyWishOf } from '../../core/study/historyWish.ts';
import { promiseKept, promiseOf } from '../../core/study/promiseOf.ts';
import type { RecordedTally } from '../../core/study/study.ts';
import { toCutStudy } from '../../core/study/toCutStudy.ts';
import { historyIn } from './history.ts';
import type { Model } from '../sums/model.ts';
import type { ReadSession } from '../ports/ports.ts';
import {
  needsSums,
  standingAsKnown,
  type KeptJudged,
  type KeptQuestion,
} from '../sums/standingAsKnown.ts';
import { stripsOfEntry } from './stripsOfEntry.ts';

/** A proven setting with the orders cut by it, and how it stands. */
export interface EntryStanding {
  readonly entry: ProvenSetting;
  readonly tallies: readonly RecordedTally[];
  readonly standing: Standing;
  /** Codes of kept settings from which it differs only by air. */
  readonly onlyByAir?: readonly string[];
}

/**
 * All that is stored of a kept setting, with the sums that its standing needs: for {@link judged}, when the session is over.
 * `sums`: unread where nobody would wait for them; its standing then says that they are missing, if it needs any.
 */
export const readKept = async (
  session: ReadSession,
  entry: ProvenSetting,
  sums: 'read' | 'unread' = 'read',
): Promise<KeptQuestion> => {
  const tallies = await session.talliesOfEntry(entry.id);
  const study = (await session.studyAsReadable(entry.cameFrom.studyId))?.study;
  const promise = promiseOf({ promise: promiseKept(entry.promise, study?.promise), tallies });
  const strips = await stripsOfEntry(session, entry, promise);
  const alike = onlyByAir(entry, await session.entriesOnlyByAir(entry)).map(({ code }) => code);
  const machine = await limitsOf(session, entry);
  const known = {
    kept: entry,
    tallies,
    strips,
    ...(machine === undefined ? {} : { machine }),
    ...(alike.length === 0 ? {} : { onlyByAir: alike }),
  };
  if (study === undefined) return known;
  if (!needsAnswer(study, entry)) return { ...known, study };
  if (sums === 'unread') return { ...known, study, isUnread: true };
  const earlier = await historyIn(session, historyWishOf(study));
  const cut = { ...toCutStudy(study), ask: { powerPct: entry.setting.powerPct } };
  return { ...known, study, answer: { cut, aim: study.aim, earlier } };
};

/** What bounds its settings, and no more: the answer is remembered by the whole question. */
const limitsOf = async (
  session: ReadSession,
  { holdsFor: { machineId } }: ProvenSetting,
): Promise<KeptQuestion['machine']> => {
  const found = machineId === undefined ? undefined : await session.machine(machineId);
  if (found === undefined) return undefined;
  const { maxPowerPct, speedRangeMmPerS, ratedCurrentMa, tubePoints } = found.machine;
  return {
    maxPowerPct,
    speedRangeMmPerS,
    ...(ratedCurrentMa === undefined ? {} : { ratedCurrentMa }),
    ...(tubePoints === undefined ? {} : { tubePoints }),
  };
};

/**
 * How a kept setting stands: the one verb by which book, label, bed, table and program say it. Milliseconds where nothing
 * was said since it was kept. Where its sums cannot be made in time it stands as not known, and says so: whoever asks gets
 * an answer, and a count that was stored is never refused for it.
 */
export const judged = async (model: Model, question: KeptQuestion): Promise<KeptJudged> => {
  if (!needsSums(question) || question.isUnread === true) return standingAsKnown(question);
  const found = await model.ask('judgeKept', question, question.kept.cameFrom.studyId);
  return found.ok ? found.value : standingAsKnown(question);
};

/** The same as an entry of the book. */
export const withStanding = async (
  model: Model,
  question: KeptQuestion,
): Promise<EntryStanding> => {
  const { standing } = await judged(model, question);
  const { kept, tallies, onlyByAir: alike } = question;
  return { entry: kept, tallies, standing, ...(alike === undefined ? {} : { onlyByAir: alike }) };
};

/** By id or by label code. Refuses: `entry-not-found`. */
export const findEntry = async (
  session: ReadSession,
  idOrCode: string,
): Promise<Outcome<ProvenSetting>> => {
  const entry = await session.entry(idOrCode);
  return entry === undefined ? refused('entry-not-found', { id: idOrCode }) : done(entry);
};
