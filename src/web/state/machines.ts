import { useQuery } from '@tanstack/react-query';
import { useSyncExternalStore } from 'react';
import { z } from 'zod';
import { undescribedMachine } from '../../core/machine/machine.ts';
import { defaultMachineId, type WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import { workshopMachineShape } from '../../formats/saved/workshopMachine.ts';
import { api } from '../../wire/api.ts';
import { callOrThrow } from './call.ts';
import { machinesAfter } from './machineChanges.ts';
import { queryKeys } from './queries.ts';
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
  const { keeper } = useWorkshop();
  const waiting = useSyncExternalStore(keeper.subscribe, keeper.machineChanges);
  const { data, isPending } = useQuery({
    queryKey: queryKeys.machines,
    queryFn: async () => {
      const { machines } = await callOrThrow(api.listMachines);
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
  try {
    localStorage.setItem(key, JSON.stringify(machines));
  } catch {
    // The server knows them all the same.
  }
};

const remembered = (): readonly WorkshopMachine[] | undefined => {
  try {
    const read = z
      .array(workshopMachineShape)
      .safeParse(JSON.parse(localStorage.getItem(key) ?? 'null'));
    return read.success ? read.data : undefined;
  } catch {
    return undefined;
  }
};
