import { useSyncExternalStore } from 'react';
import type { WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import { useMachines } from './machines.ts';
import { useHome } from './queries.ts';

/** The machine that its screens are about, until another is picked or the page is loaded anew. */
let picked: string | undefined;
const listeners = new Set<() => void>();

const subscribe = (heard: () => void): (() => void) => {
  listeners.add(heard);
  return () => listeners.delete(heard);
};

export const pickMachine = (id: string): void => {
  picked = id;
  for (const heard of listeners) heard();
};

export interface MachineOnScreen {
  /** Undefined while nothing is known. */
  readonly here: WorkshopMachine | undefined;
  /** Those that may be picked: the workshop's own, and the example's where it is open. */
  readonly all: readonly WorkshopMachine[];
  /** The sheet on the bed, where it is of this machine. */
  readonly studyId: string | undefined;
}

/** The one that was picked, else that of the sheet on the bed, else the one that sheets are begun on. */
export const useMachineHere = (): MachineOnScreen => {
  const { all, usual, isPending } = useMachines();
  const { data: home, isPending: isHomePending } = useHome();
  const wanted = useSyncExternalStore(subscribe, () => picked);
  const onBed = home?.latest?.study;
  const byId = (id: string | undefined) => all.find((machine) => machine.id === id);
  const here =
    isPending || isHomePending ? undefined : (byId(wanted) ?? byId(onBed?.machineId) ?? usual);
  const studyId = onBed !== undefined && onBed.machineId === here?.id ? onBed.id : undefined;
  return { here, all, studyId };
};
