import { done, type Outcome } from '../../core/problem.ts';
import { lastChange } from '../../core/machine/machineChange.ts';
import { defaultMachineId } from '../../core/machine/workshopMachine.ts';
import { sameMaterialAs } from '../../core/stock/sameMaterial.ts';
import { earlierSheetsOf, type EarlierSheet } from '../../core/study/earlierSheet.ts';
import { historyWishOf, type HistoryWish } from '../../core/study/historyWish.ts';
import { mostTimesThicker, pickEarlier } from '../../core/study/pickEarlier.ts';
import type { Study } from '../../core/study/study.ts';
import type { Ports, ReadSession } from '../ports/ports.ts';
import { findStudy } from './findStudy.ts';

/** Studies that are opened to look for sheets, the last touched first: each is read whole. */
const mostStudies = 30;

/**
 * What the workshop's other studies of the same material on the same machine know of their sheets: read cells and
 * counts of orders, the newest first, no more than an answer can lean on (`pickEarlier`). ~10 ms.
 */
export const historyIn = async (
  session: ReadSession,
  wish: HistoryWish,
): Promise<readonly EarlierSheet[]> => {
  const machineId = await machineMeant(session, wish);
  const ofOneKind = await session.sheetsOfKind({
    isExample: wish.isExample,
    machine: { id: machineId },
    isSameMaterial: sameMaterialAs(wish.material),
    except: wish.except,
    thicknessMm: {
      least: wish.thicknessMm / mostTimesThicker,
      most: wish.thicknessMm * mostTimesThicker,
    },
    limit: mostStudies,
  });
  const sheets: EarlierSheet[] = [];
  for (const id of ofOneKind) {
    const found = await session.study(id);
    if (found !== undefined) sheets.push(...earlierSheetsOf(found.study));
  }
  const changed = lastChange((await session.machine(machineId))?.changes ?? []);
  return pickEarlier(
    changed === undefined
      ? sheets
      : sheets.map((sheet) =>
          Date.parse(sheet.lastReadAt) < Date.parse(changed.at)
            ? { ...sheet, beforeChange: true }
            : sheet,
        ),
  );
};

/** A page that has not heard yet which machine is the default asks for that one. */
const machineMeant = async (session: ReadSession, { machineId }: HistoryWish): Promise<string> =>
  machineId === defaultMachineId
    ? ((await session.machines()).find(({ isDefault }) => isDefault)?.id ?? machineId)
    : machineId;

/** Whether an answer is to lean on earlier sheets. Absent: it is. */
export interface EarlierSheetsWish {
  readonly earlierSheets?: 'with' | 'without';
}

/** What earlier sheets taught for a study, or nothing where it is wished so. */
export const historyFor = async (
  session: ReadSession,
  study: Study,
  { earlierSheets = 'with' }: EarlierSheetsWish = {},
): Promise<readonly EarlierSheet[]> =>
  earlierSheets === 'with' ? historyIn(session, historyWishOf(study)) : [];

/** A study and its history, of one moment. Refuses: `study-not-found`. */
export const readWithHistory = (
  { store }: Pick<Ports, 'store'>,
  studyId: string,
  wish: EarlierSheetsWish,
): Promise<Outcome<{ readonly study: Study; readonly earlier: readonly EarlierSheet[] }>> =>
  store.read(async (session) => {
    const found = await findStudy(session, studyId);
    if (!found.ok) return found;
    const { study } = found.value;
    return done({ study, earlier: await historyFor(session, study, wish) });
  });
