import { machineTests, testList, type MachineTestName } from '../../core/machineTests.ts';
import { omit } from '../../core/omit.ts';
import { done, refused, type Outcome, type Problem } from '../../core/problem.ts';
import { mergeEvents } from '../../core/reading/mergeEvents.ts';
import type { RecordedTally, SavedStudy } from '../../core/study/study.ts';
import type { ExportFile } from '../../formats/exportFile.ts';
import type { TestLists } from '../../formats/machineTests.ts';
import type { NamedMaterial } from '../../core/stock/namedMaterial.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import { knownBy } from '../../formats/saved/materialKnown.ts';
import { importMachines } from '../shared/importMachines.ts';
import {
  noneImported,
  plus,
  type ImportCounts,
  type Imported,
  type ImportedCounts,
} from '../shared/imported.ts';
import { defaultMachine } from '../shared/machineOf.ts';
import type { Ports, Session } from '../ports/ports.ts';
import { fitsACard } from '../../core/reading/fitsACard.ts';
import { sameValue } from '../../core/sameValue.ts';

/**
 * Adds what a file holds that is not here yet, all of it or nothing; what is here stays as it is. Readings fall into the
 * order in which they were said (`mergeEvents`). Importing the same file twice adds nothing. Nothing is lost: a sheet whose
 * material is refused today comes in as well, is named among `notAdvised`, and whatever advises refuses it. Refuses:
 * `import-names-unknown-machine`, `import-names-unknown-setting`, `card-not-found` and `cell-not-on-card` for what was said
 * of a shape that no card has, `card-code-taken` where the file has another card under the code of one that is here in the
 * same study.
 */
export const importAll = (ports: Ports, file: ExportFile): Promise<Outcome<Imported>> =>
  ports.store.change(async (session) => {
    const { clock } = ports;
    const looked = knownBy(file.materialKnown);
    const materials = [
      ...file.studies.map(({ stock }) => stock),
      ...file.book.map(({ holdsFor }) => holdsFor),
      ...[...file.kerfTests, ...file.markTests].map(({ stock }) => stock),
    ].map(looked);
    let imported: ImportedCounts = { added: noneImported, alreadyHere: noneImported };
    const note = (what: keyof ImportCounts, isNew: boolean, count = 1): void => {
      imported = plus(imported, what, isNew, count);
    };
    const machineHere = await importMachines(session, file, (isNew) => note('machines', isNew));
    const here = <T extends { readonly machineId?: string }>(thing: T): T => {
      const machineId = machineHere(thing.machineId ?? '');
      const rest = omit(thing, 'machineId');
      return (machineId === undefined ? rest : { ...rest, machineId }) as T;
    };
    // The last comes first in a file: what comes last here will stand first.
    for (const entry of file.book.toReversed()) {
      const isNew = (await session.entry(entry.id))?.id !== entry.id;
      if (isNew) await session.insertEntry({ ...entry, holdsFor: looked(here(entry.holdsFor)) });
      note('provenSettings', isNew);
    }
    for (const study of file.studies.toReversed()) {
      const known = await session.study(study.id);
      if (known === undefined) {
        const isLost = file.leftOut?.some(({ id }) => id === study.machineId) === true;
        const machineId =
          machineHere(study.machineId) ??
          (isLost ? (await defaultMachine(session, ports)).id : undefined);
        if (machineId === undefined)
          return refused('import-names-unknown-machine', { id: study.machineId });
        const stock = looked(study.stock);
        const bare = { ...study, stock, machineId, tallies: [], cards: [], events: [] };
        const blank = omit(bare, 'orders');
        await session.insertStudy(blank, clock.now());
      }
      note('studies', known === undefined);
      const added = await addParts(session, study, known?.study, note);
      if (!added.ok) return added;
      if (known !== undefined && added.value) await session.touch(study.id, clock.now());
    }
    for (const tally of file.tallies) {
      const added = await addTally(session, undefined, tally, note);
      if (!added.ok) return added;
    }
    for (const name of machineTests) await addTests(session, name, file, { here, note });
    return done({ ...imported, notAdvised: notAdvisedOn(materials) });
  });

/** Why nothing is advised on some of what came in: once for each material. */
const notAdvisedOn = (materials: readonly NamedMaterial[]): readonly Problem[] => {
  const byName = new Map(materials.map((named) => [named.material, acceptMaterial(named)]));
  return [...byName.values()].flatMap((accepted) => (accepted.ok ? [] : [accepted.problem]));
};

interface Adding {
  /** Gives a thing to its machine here. */
  readonly here: <T extends { readonly machineId?: string }>(thing: T) => T;
  readonly note: Note;
}

/** The tests of one kind that are not here yet. */
const addTests = async (
  session: Session,
  name: MachineTestName,
  file: TestLists,
  { here, note }: Adding,
): Promise<void> => {
  const list = testList(name);
  for (const test of file[list]) {
    const isNew = (await session.machineTest(name, test.id)) === undefined;
    if (isNew) await session.insertMachineTest(name, here(test));
    note(list, isNew);
  }
};

type Note = (what: keyof ImportCounts, isNew: boolean, count?: number) => void;

/** Cards, events and tallies of one study. Says whether any was new. */
const addParts = async (
  session: Session,
  study: SavedStudy,
  known: SavedStudy | undefined,
  note: Note,
): Promise<Outcome<boolean>> => {
  let anyNew = false;
  for (const card of study.cards) {
    const here = known?.cards.find(({ code }) => code === card.code);
    if (here !== undefined && !sameValue(omit(here, 'note'), omit(card, 'note')))
      return refused('card-code-taken', { card: card.code });
    if (here === undefined) await session.insertCard(study.id, card);
    note('cards', here === undefined);
    anyNew ||= here === undefined;
  }
  const cards = [...(known?.cards ?? []), ...study.cards];
  for (const event of study.events) {
    const fitting = fitsACard(event, cards);
    if (!fitting.ok) return fitting;
  }
  const events = mergeEvents(known?.events ?? [], study.events);
  const stored = await session.arrangeEvents(study.id, events);
  note('events', true, stored);
  note('events', false, study.events.length - stored);
  for (const order of study.orders ?? []) {
    const of = await session.studyOfOrder(order.id);
    if (of !== undefined) continue;
    await session.keepOrder(study.id, order);
    anyNew = true;
  }
  for (const tally of study.tallies) {
    const added = await addTally(session, study.id, tally, note);
    if (!added.ok) return added;
    anyNew ||= added.value;
  }
  return done(anyNew || stored > 0);
};

const addTally = async (
  session: Session,
  studyId: string | undefined,
  tally: RecordedTally,
  note: Note,
): Promise<Outcome<boolean>> => {
  const entryId = tally.provenSettingId;
  if (entryId !== undefined && (await session.entry(entryId))?.id !== entryId)
    return refused('import-names-unknown-setting', { tally: tally.id, id: entryId });
  const isNew = (await session.tally(tally.id)) === undefined;
  if (isNew) await session.insertTally(studyId, tally);
  note('tallies', isNew);
  return done(isNew);
};
