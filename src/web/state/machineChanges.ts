import type { Machine } from '../../core/machine/machine.ts';
import type { MachineChange } from '../../core/machine/machineChange.ts';
import { undescribedMachine } from '../../core/machine/machine.ts';
import { defaultMachineId, type WorkshopMachine } from '../../core/machine/workshopMachine.ts';

/** One thing that a person said of a machine on this page. It counts for every sheet of that machine. */
export type MachineSaid = { readonly machineId: string } & (
  | {
      readonly kind: 'describe-machine';
      readonly addedAt: string;
      readonly machine?: Machine;
      readonly isDefault?: true;
    }
  | { readonly kind: 'note-machine-change'; readonly change: MachineChange }
  | { readonly kind: 'remove-machine-change'; readonly changeId: string }
);

/** The machines after what was said; an id that is not known is another one. Said twice is said once. */
export const machinesAfter = (
  machines: readonly WorkshopMachine[],
  said: readonly MachineSaid[],
): readonly WorkshopMachine[] => said.reduce(after, machines);

const after = (
  machines: readonly WorkshopMachine[],
  said: MachineSaid,
): readonly WorkshopMachine[] => {
  const isMeant = ({ id, isDefault }: WorkshopMachine): boolean =>
    id === said.machineId || (said.machineId === defaultMachineId && isDefault);
  if (machines.some(isMeant))
    return machines.map((each) =>
      isMeant(each) ? saidOf(each, said) : withoutDefault(each, said),
    );
  if (said.kind !== 'describe-machine') return machines;
  const added: WorkshopMachine = {
    version: 1,
    id: said.machineId,
    isExample: false,
    isDefault: !machines.some(({ isExample }) => !isExample),
    addedAt: said.addedAt,
    machine: undescribedMachine,
    changes: [],
  };
  return [...machines.map((each) => withoutDefault(each, said)), saidOf(added, said)];
};

const withoutDefault = (machine: WorkshopMachine, said: MachineSaid): WorkshopMachine =>
  said.kind === 'describe-machine' && said.isDefault === true
    ? { ...machine, isDefault: false }
    : machine;

const saidOf = (before: WorkshopMachine, said: MachineSaid): WorkshopMachine => {
  switch (said.kind) {
    case 'describe-machine':
      return {
        ...before,
        machine: said.machine ?? before.machine,
        isDefault: said.isDefault ?? before.isDefault,
      };
    case 'note-machine-change':
    case 'remove-machine-change':
      return { ...before, changes: changesAfter(before.changes, said) };
  }
};

/** What was changed on a machine, after one more was noted or one taken back. */
export const changesAfter = (
  changes: readonly MachineChange[],
  said: Exclude<MachineSaid, { kind: 'describe-machine' }>,
): readonly MachineChange[] =>
  said.kind === 'remove-machine-change'
    ? changes.filter(({ id }) => id !== said.changeId)
    : changes.some(({ id }) => id === said.change.id)
      ? changes
      : [...changes, said.change];
