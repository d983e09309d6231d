import type { MachineChange, MachineChangeKind } from '../../core/machine/machineChange.ts';
import { defaultMachineId, type WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { defaultMachine, findMachine } from '../shared/machineOf.ts';
import type { Ports } from '../ports/ports.ts';
import { sameValue } from '../../core/sameValue.ts';

export interface MachineChangeToNote {
  readonly id?: string;
  /** When it was done; absent: now. */
  readonly at?: string;
  readonly what: MachineChangeKind;
  readonly note?: string;
}

/**
 * Notes that something was changed on a machine: what was cut before it teaches less. The same one sent twice is noted once.
 * Refuses: `machine-not-found`, `machine-change-id-taken`, `machine-change-ahead` for a date that lies ahead.
 */
export const noteMachineChange = (
  ports: Ports,
  machineId: string,
  asked: MachineChangeToNote,
): Promise<Outcome<WorkshopMachine>> =>
  ports.store.change(async (session) => {
    const found =
      machineId === defaultMachineId
        ? done(await defaultMachine(session, ports))
        : await findMachine(session, machineId);
    if (!found.ok) return found;
    const { value: before } = found;
    const now = ports.clock.now();
    const change: MachineChange = {
      ...asked,
      id: asked.id ?? ports.ids.newId(),
      at: asked.at ?? now,
    };
    const known = before.changes.find(({ id }) => id === change.id);
    if (known !== undefined)
      return sameValue(known, { ...change, at: asked.at ?? known.at })
        ? done(before)
        : refused('machine-change-id-taken', { id: change.id });
    if (Date.parse(change.at) > Date.parse(now) + clockSlackMs)
      return refused('machine-change-ahead', { at: change.at });
    const machine = { ...before, changes: [...before.changes, change] };
    await session.replaceMachine(machine);
    return done(machine);
  });

/** The clock of a phone may be ahead of this one's by as much. */
const clockSlackMs = 24 * 3_600_000;
