import { machineTests, testList, type MachineTest } from '../../core/machineTests.ts';
import { omit } from '../../core/omit.ts';
import type { RecordedTally, SavedStudy } from '../../core/study/study.ts';
import type { ExportFile } from '../../formats/exportFile.ts';
import type { TestLists } from '../../formats/machineTests.ts';
import { ownMachines } from '../shared/machineOf.ts';
import type { Ports, ReadSession } from '../ports/ports.ts';

/**
 * Everything that the workshop has, in one file that can be imported anywhere. The invented example stays behind; a tally
 * of the workshop's own that named one of its settings is exported without that name. What cannot be read is left out and
 * named (`leftOut`), and the rest is exported.
 */
export const exportAll = ({ store, clock }: Pick<Ports, 'store' | 'clock'>): Promise<ExportFile> =>
  store.readLong(async (session) => {
    const book = (await session.entries()).filter(({ isExample }) => !isExample);
    const exported = new Set(book.map(({ id }) => id));
    const studies: SavedStudy[] = [];
    for (const { id, isExample } of await session.summaries()) {
      const study = isExample ? undefined : (await session.studyAsReadable(id))?.study;
      if (study === undefined) continue;
      const tallies = study.tallies.map((tally) => withoutStranger(tally, exported));
      // Without a card that cannot be read, what was said of it could not be read in again.
      const codes = new Set(study.cards.map(({ code }) => code));
      const events = study.events.filter(({ cardCode }) => codes.has(cardCode));
      studies.push({ ...omit(study, 'machine', 'machineChanges'), tallies, events });
    }
    const machines = await ownMachines(session);
    const loose = await session.looseTallies();
    const tests = await testsIn(session);
    const leftOut = session.passedOver().map(({ params }) => params);
    return {
      kind: 'throughcut-export',
      version: 3,
      exportedAt: clock.now(),
      machines,
      studies,
      book,
      tallies: loose.filter(({ provenSettingId }) => exported.has(provenSettingId ?? '')),
      ...tests,
      ...(leftOut.length === 0 ? {} : { leftOut }),
    };
  });

/** Every test of the workshop's own machines, the first first. */
const testsIn = async (session: ReadSession): Promise<TestLists> => {
  const lists: [string, readonly MachineTest[]][] = [];
  for (const name of machineTests) {
    const tests = await session.machineTests(name);
    lists.push([testList(name), tests.filter(({ isExample }) => isExample !== true).toReversed()]);
  }
  return Object.fromEntries(lists) as unknown as TestLists;
};

/** Leaves out the name of a setting that is not exported. */
const withoutStranger = (tally: RecordedTally, exported: ReadonlySet<string>): RecordedTally => {
  const { provenSettingId, ...rest } = tally;
  return provenSettingId === undefined || exported.has(provenSettingId) ? tally : rest;
};
