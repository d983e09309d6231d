import { omit } from '../../core/omit.ts';
import type { RecordedTally, SavedStudy } from '../../core/study/study.ts';
import type { ExportFile } from '../../formats/exportFile.ts';
import { ownMachines } from '../shared/machineOf.ts';
import type { Ports } from '../ports/ports.ts';

/**
 * Everything that the workshop has, in one file that can be imported anywhere. The invented example stays behind; a tally
 * of the workshop's own that named one of its settings is exported without that name. What cannot be read is left out and
 * named (`leftOut`), and the rest is exported.
 */
export const exportAll = ({ store, clock }: Pick<Ports, 'store' | 'clock'>): Promise<ExportFile> =>
  store.read(async (session) => {
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
    const meterings = own(await session.meterings()).toReversed();
    const focusTests = own(await session.focusTests()).toReversed();
    const bedTests = own(await session.bedTests()).toReversed();
    const leftOut = session.passedOver().map(({ params }) => params);
    return {
      kind: 'throughcut-export',
      version: 3,
      exportedAt: clock.now(),
      machines,
      studies,
      book,
      tallies: loose.filter(({ provenSettingId }) => exported.has(provenSettingId ?? '')),
      meterings,
      focusTests,
      bedTests,
      ...(leftOut.length === 0 ? {} : { leftOut }),
    };
  });

const own = <T extends { readonly isExample?: true }>(tests: readonly T[]): readonly T[] =>
  tests.filter(({ isExample }) => isExample !== true);

/** Leaves out the name of a setting that is not exported. */
const withoutStranger = (tally: RecordedTally, exported: ReadonlySet<string>): RecordedTally => {
  const { provenSettingId, ...rest } = tally;
  return provenSettingId === undefined || exported.has(provenSettingId) ? tally : rest;
};
