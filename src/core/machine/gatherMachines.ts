import { undescribedMachine, type Machine } from './machine.ts';

/** A description of a machine that a sheet had for itself. */
export interface OwnDescription {
  /** Of what it is the description. */
  readonly key: string;
  readonly machine: Machine;
}

export interface GatheredMachine {
  readonly machine: Machine;
  /** Of what descriptions it was made, in their order. */
  readonly keys: readonly string[];
}

/**
 * The machines that a workshop has, where each of its sheets described one for itself: by their names, since everything
 * else may have been read again and better. A sheet without a name is of the only machine that has one; where there are
 * several, or none, such sheets share one without a name. Give the newest first: of each figure the newest counts that is
 * not merely what is assumed of an undescribed machine. `invented`: the example's machine, whose figures nobody measured;
 * where a description took them over, they are left out. O(n²) in the number of machines.
 */
export const gatherMachines = (
  newestFirst: readonly OwnDescription[],
  invented?: Machine,
): readonly GatheredMachine[] => {
  const own = newestFirst.map(({ key, machine }) => ({
    key,
    machine: invented === undefined ? machine : withoutInvented(machine, invented),
  }));
  const names = new Set(
    own.map(({ machine }) => machineName(machine)).filter((name) => name !== ''),
  );
  const [only] = names.size === 1 ? names : [];
  const groups = new Map<string, OwnDescription[]>();
  for (const each of own) {
    const name = machineName(each.machine) || (only ?? '');
    groups.set(name, [...(groups.get(name) ?? []), each]);
  }
  return [...groups.values()].map((group) => ({
    machine: together(group.map(({ machine }) => machine)),
    keys: group.map(({ key }) => key),
  }));
};

/** A name as it is compared: capitals and space at the ends count for nothing. Empty: it has none. */
export const machineName = ({ name = '' }: Pick<Machine, 'name'>): string =>
  name.trim().toLowerCase();

const together = (newestFirst: readonly Machine[]): Machine =>
  newestFirst.reduceRight<Machine>(
    (older, newer) => ({ ...older, ...said(newer) }),
    undescribedMachine,
  );

/** Without what is assumed of every machine. */
const said = (machine: Machine): Partial<Machine> => without(machine, undescribedMachine);

const withoutInvented = (machine: Machine, invented: Machine): Machine => {
  const isTakenOver =
    (machineName(machine) !== '' && machineName(machine) === machineName(invented)) ||
    (machine.tubePoints !== undefined && isSame(machine.tubePoints, invented.tubePoints));
  return isTakenOver ? { ...undescribedMachine, ...without(machine, invented) } : machine;
};

const without = (machine: Machine, other: Machine): Partial<Machine> => {
  const others = new Map<string, unknown>(Object.entries(other));
  return Object.fromEntries(
    Object.entries(machine).filter(([key, value]) => !isSame(value, others.get(key))),
  );
};

const isSame = (one: unknown, other: unknown): boolean =>
  JSON.stringify(one) === JSON.stringify(other);
