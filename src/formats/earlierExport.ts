import type { ProvenSetting } from '../core/book/provenSetting.ts';
import { gatherMachines, type OwnDescription } from '../core/machine/gatherMachines.ts';
import { undescribedMachine, type Machine } from '../core/machine/machine.ts';
import { byTestList, machineTests, testList } from '../core/machineTests.ts';
import type { WorkshopMachine } from '../core/machine/workshopMachine.ts';
import { omit } from '../core/omit.ts';
import type { SavedStudy } from '../core/study/study.ts';
import { exampleMachine } from '../core/virtual/exampleMachine.ts';
import type { TestLists } from './machineTests.ts';

/** What of an export names its machines. */
interface Parts<S> extends TestLists {
  readonly studies: readonly S[];
  readonly book: readonly ProvenSetting[];
}

/** A study from before machines were things of their own. */
type SelfDescribed = Omit<SavedStudy, 'machineId'> & { readonly machine: Machine };

interface WithMachines extends Parts<SavedStudy> {
  readonly machines: readonly WorkshopMachine[];
}

/**
 * Makes the machines of an earlier export out of what its studies described, the last touched first, and of what its book
 * and tests named (`gatherMachines`).
 */
export const machinesOfEarlierExport = (
  file: Parts<SelfDescribed> & { readonly exportedAt: string },
): WithMachines => {
  const found: readonly OwnDescription[] = [
    ...file.studies.map(({ id, machine }) => ({ key: keyOf('studies', id), machine })),
    ...file.book.map(({ id, holdsFor }) => ({ key: keyOf('book', id), machine: named(holdsFor) })),
    ...machineTests
      .map(testList)
      .flatMap((kind) =>
        file[kind].map((test) => ({ key: keyOf(kind, test.id), machine: named(test) })),
      ),
  ];
  const createdAt = new Map(
    file.studies.map(({ id, createdAt: at }) => [keyOf('studies', id), at]),
  );
  const idOf = new Map<string, string>();
  const machines = gatherMachines(found, exampleMachine).map(
    ({ machine, keys }, i): WorkshopMachine => {
      const id = `machine-${keys[0]?.split(' ')[1] ?? ''}`.slice(0, 64);
      for (const key of keys) idOf.set(key, id);
      const dates = keys.flatMap((key) => createdAt.get(key) ?? []);
      const addedAt = dates.reduce((a, b) => (a < b ? a : b), file.exportedAt);
      const isDefault = i === 0;
      return { version: 1, id, isExample: false, isDefault, addedAt, machine, changes: [] };
    },
  );
  const machineId = (kind: keyof Parts<unknown>, id: string): string =>
    idOf.get(keyOf(kind, id)) ?? '';
  return {
    machines,
    studies: file.studies.map((study) => ({
      ...omit(study, 'machine'),
      machineId: machineId('studies', study.id),
    })),
    book: file.book.map((entry) => ({
      ...entry,
      holdsFor: { ...entry.holdsFor, machineId: machineId('book', entry.id) },
    })),
    ...(byTestList((name) => {
      const list = testList(name);
      return file[list].map((one) => ({ ...one, machineId: machineId(list, one.id) }));
    }) as TestLists),
  };
};

/** Ids are of one kind only, and hold no space. */
const keyOf = (kind: keyof Parts<unknown>, id: string): string => `${kind} ${id}`;

const named = ({ machine }: { readonly machine?: string }): Machine =>
  machine === undefined ? undescribedMachine : { ...undescribedMachine, name: machine };
