import type { Machine } from '../../core/machine/machine.ts';
import { done, type Outcome } from '../../core/problem.ts';
import type { WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import type { Habit } from '../../core/reading/tally.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import { findMachine, machineFor } from '../shared/machineOf.ts';
import type { Ports, Session } from '../ports/ports.ts';
import { findStudy } from '../shared/findStudy.ts';
import type { Study } from '../../core/study/study.ts';
import type { StoredStudy, StudyHead } from '../ports/stored.ts';

/** What to replace, each whole. `habit: null` takes it away. */
export type StudyChange = Partial<Omit<StudyHead, 'habit'>> & {
  readonly habit?: Habit | null;
  /** What is known of the study's machine, for every sheet of it. */
  readonly machine?: Machine;
};

/** Replaces parts of what a study says of its sheet and wishes, and names or describes its machine. Refuses: `study-not-found`,
 * a refused material, `machine-not-found`, `machine-is-invented`. */
export const changeStudy = (
  ports: Ports,
  id: string,
  change: StudyChange,
): Promise<Outcome<StoredStudy>> =>
  ports.store.change(async (session) => {
    if (change.stock !== undefined) {
      const accepted = acceptMaterial(change.stock);
      if (!accepted.ok) return accepted;
    }
    const found = await findStudy(session, id);
    if (!found.ok) return found;
    const { habit, machine, machineId, ...replaced } = change;
    const { habit: habitBefore, ...before } = found.value.study;
    const of = await machineOfStudy(session, ports, found.value.study, machineId);
    if (!of.ok) return of;
    const described = machine === undefined ? of.value : { ...of.value, machine };
    if (machine !== undefined) await session.replaceMachine(described);
    const habitNow = habit === undefined ? habitBefore : (habit ?? undefined);
    const study = {
      ...before,
      ...replaced,
      machineId: described.id,
      machine: described.machine,
      machineChanges: described.changes,
      ...(habitNow === undefined ? {} : { habit: habitNow }),
    };
    const touchedAt = ports.clock.now();
    await session.replaceHead(id, study);
    return done({ study, revision: await session.touch(id, touchedAt), touchedAt });
  });

/** A study of the example stays on the example's machine, whatever is named. */
const machineOfStudy = (
  session: Session,
  ports: Ports,
  study: Study,
  named: string | undefined,
): Promise<Outcome<WorkshopMachine>> =>
  named === undefined || study.isExample
    ? findMachine(session, study.machineId)
    : machineFor(session, ports, named);
