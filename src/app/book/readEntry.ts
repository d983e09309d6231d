import { holdsFor } from '../../core/book/holdsFor.ts';
import type { ProvenSetting } from '../../core/book/provenSetting.ts';
import { done, type Outcome, type Problem } from '../../core/problem.ts';
import type { Stock } from '../../core/stock/stock.ts';
import { findEntry, readKept, withStanding, type EntryStanding } from '../shared/entryStanding.ts';
import type { AskingPorts, ReadSession } from '../ports/ports.ts';

/** A kept setting, and how it suits the sheet on the bed. */
export interface EntryRead extends EntryStanding {
  /** Where another sheet lies on the bed than the one it was kept from. */
  readonly onBed?: {
    readonly stock: Stock;
    /** In what that sheet and its machine differ from what the setting holds for: empty where in nothing. */
    readonly differs: readonly Problem[];
  };
}

/** One proven setting, by id or by the code on its shelf label. Refuses: `entry-not-found`. */
export const readEntry = async (
  { store, model }: Pick<AskingPorts, 'store' | 'model'>,
  idOrCode: string,
): Promise<Outcome<EntryRead>> => {
  const read = await store.read(async (session) => {
    const found = await findEntry(session, idOrCode);
    if (!found.ok) return found;
    return done({
      kept: await readKept(session, found.value),
      beside: await besideBed(session, found.value),
    });
  });
  return read.ok
    ? done({ ...(await withStanding(model, read.value.kept)), ...read.value.beside })
    : read;
};

/** Nothing for its own sheet and its strips, and nothing between the invented example and the workshop's own. */
const besideBed = async (
  session: ReadSession,
  entry: ProvenSetting,
): Promise<Pick<EntryRead, 'onBed'>> => {
  const sheet = await session.onBed();
  if (
    sheet === undefined ||
    sheet.isExample !== entry.isExample ||
    sheet.id === entry.cameFrom.studyId ||
    sheet.stripOf === entry.id
  )
    return {};
  const { stock, machineId } = sheet;
  const found = await session.machine(machineId);
  if (found === undefined) return {};
  return {
    onBed: { stock, differs: holdsFor(entry, { stock, machine: found.machine, machineId }) },
  };
};
