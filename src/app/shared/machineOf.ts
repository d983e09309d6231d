import { machineName } from '../../core/machine/gatherMachines.ts';
import { undescribedMachine, type Machine } from '../../core/machine/machine.ts';
import { defaultMachineId, type WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import type { Ports, ReadSession, Session } from '../ports/ports.ts';
import { sameValue } from '../../core/sameValue.ts';

type Making = Pick<Ports, 'clock' | 'ids'>;

/** A machine by its id. Refuses: `machine-not-found`. */
export const findMachine = async (
  session: ReadSession,
  id: string,
): Promise<Outcome<WorkshopMachine>> => {
  const machine = await session.machine(id);
  return machine === undefined ? refused('machine-not-found', { id }) : done(machine);
};

/** The machine that things are begun on where nobody says otherwise; made, undescribed, where the workshop has none yet. */
export const defaultMachine = async (
  session: Session,
  making: Making,
): Promise<WorkshopMachine> => {
  const own = await ownMachines(session);
  return own.find(({ isDefault }) => isDefault) ?? own[0] ?? addMachine(session, making, {});
};

/** The workshop's own, without the example's. */
export const ownMachines = async (session: ReadSession): Promise<readonly WorkshopMachine[]> =>
  (await session.machines()).filter(({ isExample }) => !isExample);

/** Adds one of the workshop's own. The first is the default. */
export const addMachine = async (
  session: Session,
  { clock, ids }: Making,
  asked: { readonly id?: string; readonly addedAt?: string; readonly machine?: Machine },
): Promise<WorkshopMachine> => {
  const machine: WorkshopMachine = {
    version: 1,
    id: asked.id ?? ids.newId(),
    isExample: false,
    isDefault: (await ownMachines(session)).length === 0,
    addedAt: asked.addedAt ?? clock.now(),
    machine: asked.machine ?? undescribedMachine,
    changes: [],
  };
  await session.insertMachine(machine);
  return machine;
};

/**
 * The machine that something of the workshop's own is to be of: the default where none is named. Nothing of the workshop's is
 * of the example's invented machine, nor the other way about. Refuses: `machine-not-found`, `machine-is-invented`.
 */
export const machineFor = async (
  session: Session,
  making: Making,
  id: string | undefined,
): Promise<Outcome<WorkshopMachine>> => {
  if (id === undefined || id === defaultMachineId)
    return done(await defaultMachine(session, making));
  const found = await findMachine(session, id);
  return found.ok && found.value.isExample ? refused('machine-is-invented') : found;
};

/**
 * The machine that a description means, which came along with something: one that is described just so; the one of that name,
 * described anew; one that nobody has described yet; else another. A description that says nothing means the default.
 */
export const machineDescribedAs = async (
  session: Session,
  making: Making,
  machine: Machine,
): Promise<WorkshopMachine> => {
  if (sameValue(machine, undescribedMachine)) return defaultMachine(session, making);
  const own = await ownMachines(session);
  const alike = own.find((each) => sameValue(each.machine, machine));
  if (alike !== undefined) return alike;
  const name = machineName(machine);
  const meant =
    own.find((each) => name !== '' && machineName(each.machine) === name) ??
    own.find((each) => sameValue(each.machine, undescribedMachine));
  if (meant === undefined) return addMachine(session, making, { machine });
  const described = { ...meant, machine };
  await session.replaceMachine(described);
  return described;
};
