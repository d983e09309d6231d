import { checkPromise, type PromiseCheck } from '../core/book/promiseCheck.ts';
import type { ProvenSetting } from '../core/book/provenSetting.ts';
import { done, type Outcome } from '../core/problem.ts';
import type { RecordedTally } from '../core/study/study.ts';
import type { ReadSession } from './ports.ts';
import { refuse } from './refuse.ts';

/** A proven setting with the orders cut by it, and how they stand to its promise. */
export interface EntryWithTallies {
  readonly entry: ProvenSetting;
  readonly tallies: readonly RecordedTally[];
  readonly check: PromiseCheck;
}

export const withTallies = async (
  session: ReadSession,
  entry: ProvenSetting,
): Promise<EntryWithTallies> => {
  const tallies = await session.talliesOfEntry(entry.id);
  return { entry, tallies, check: checkPromise(entry.promise, tallies) };
};

/** By id or by label code. Refuses: `entry-not-found`. */
export const findEntry = async (
  session: ReadSession,
  idOrCode: string,
): Promise<Outcome<ProvenSetting>> => {
  const entry = await session.entry(idOrCode);
  return entry === undefined ? refuse('entry-not-found', { id: idOrCode }) : done(entry);
};
