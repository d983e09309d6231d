import { useQuery } from '@tanstack/react-query';
import { useSyncExternalStore } from 'react';
import { undescribedMachine } from '../../core/machine/machine.ts';
import { defaultMachineId, type WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import { pageApi } from '../../wire/pageApi.ts';
import { browserShelf } from './browserShelf.ts';
import { callOrThrow } from './call.ts';
import { machinesAfter } from './machineChanges.ts';
import { queryKeys } from './queries.ts';
import { keepOn } from './shelf.ts';
import { useWorkshop } from './workshop.tsx';

/** The machine of a workshop that has described none, and of one of which this page knows nothing yet. */
export const unknownMachine: WorkshopMachine = {
  version: 1,
  id: defaultMachineId,
  isExample: false,
  isDefault: true,
  addedAt: '1970-01-01T00:00:00.000Z',
  machine: undescribedMachine,
  changes: [],
};

export interface Machines {
  readonly all: readonly WorkshopMachine[];
  /** The workshop's own. */
  readonly own: readonly WorkshopMachine[];
  /** The one that sheets are begun on. */
  readonly usual: WorkshopMachine;
  readonly isPending: boolean;
}

/** The machines as this page knows them: the server's, with what it has not sent yet on top. */
export const useMachines = (): Machines => {
  const { store } = useWorkshop();
  const waiting = useSyncExternalStore(store.subscribe, store.machineChanges);
  const { data, isPending } = useQuery({
    queryKey: queryKeys.machines,
    queryFn: async () => {
      const { machines } = await callOrThrow(pageApi.listMachines);
      remember(machines.filter(({ isExample }) => !isExample));
      return machines;
    },
    retry: false,
    placeholderData: remembered,
  });
  const all = machinesAfter(data ?? [], waiting);
  const own = all.filter(({ isExample }) => !isExample);
  const usual = own.find(({ isDefault }) => isDefault) ?? own[0] ?? unknownMachine;
  return { all, own, usual, isPending };
};

const key = 'throughcut.machines';

/** Sheets can be begun while the server is away: on the machines that it told of last. */
const remember = (machines: readonly WorkshopMachine[]): void => {
  // Where there is no room, the server knows them all the same.
  keepOn(browserShelf, key, JSON.stringify(machines));
};

/** What this page itself wrote. */
const remembered = (): readonly WorkshopMachine[] | undefined => {
  try {
    const kept: unknown = JSON.parse(browserShelf.getItem(key) ?? 'null');
    return Array.isArray(kept) ? (kept as readonly WorkshopMachine[]).filter(isOurs) : undefined;
  } catch {
    return undefined;
  }
};

const isOurs = ({ version }: Partial<WorkshopMachine>): boolean => version === 1;
