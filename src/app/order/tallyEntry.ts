import type { Author } from '../../core/author.ts';
import { done, type Outcome } from '../../core/problem.ts';
import type { Setting } from '../../core/machine/setting.ts';
import { promiseOf } from '../../core/study/promiseOf.ts';
import { findEntry, readKept, withStanding, type EntryStanding } from '../shared/entryStanding.ts';
import type { AskingPorts } from '../ports/ports.ts';
import { storeTally } from '../shared/storeTally.ts';
import type { TallyToRecord } from './recordTally.ts';

/** The count of an order cut with a proven setting; the setting says the rest. */
export type OrderCount = Omit<TallyToRecord, 'setting' | 'provenSettingId' | 'partLengthMm'> & {
  /** Absent: the length that the promise was given for. */
  readonly partLengthMm?: number;
  /** Absent: the kept setting. */
  readonly setting?: Setting;
};

/**
 * Counts an order cut with a proven setting, and says how the promise stands. The tally joins the study that the
 * setting came from, where that is still there: production is the best card there is. The same tally sent twice is
 * stored once. Refuses: `entry-not-found`, `tally-id-taken`.
 */
export const tallyEntry = async (
  { store, clock, ids, model, by }: AskingPorts & Author,
  idOrCode: string,
  asked: OrderCount,
): Promise<Outcome<EntryStanding>> => {
  const counted = await store.change(async (session) => {
    const found = await findEntry(session, idOrCode);
    if (!found.ok) return found;
    const entry = found.value;
    const study = await session.study(entry.cameFrom.studyId);
    const now = clock.now();
    const before = await session.talliesOfEntry(entry.id);
    const promise = promiseOf({ promise: entry.promise, tallies: before });
    const tally = {
      partLengthMm: promise.partLengthMm,
      setting: entry.setting,
      ...asked,
      id: asked.id ?? ids.newId(),
      at: asked.at ?? now,
      provenSettingId: entry.id,
      ...(by === undefined ? {} : { by }),
    };
    const stored = await storeTally(session, study?.study.id, tally, asked);
    if (!stored.ok) return stored;
    if (study !== undefined && stored.value.isNew) await session.touch(study.study.id, now);
    return done(entry);
  });
  if (!counted.ok) return counted;
  // Weighed when the count is safe: nobody who writes waits for a fit.
  const kept = await store.read((session) => readKept(session, counted.value));
  return done(await withStanding(model, kept));
};
