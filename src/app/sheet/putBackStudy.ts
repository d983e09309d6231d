import { done, type Outcome } from '../../core/problem.ts';
import { defaultMachine } from '../shared/machineOf.ts';
import type { Ports } from '../ports/ports.ts';
import { findStudy } from '../shared/findStudy.ts';
import type { StoredStudy } from '../ports/stored.ts';

/**
 * Brings a removed study back as it was, on its machine, or on the default where that is gone. One that is here stays as it
 * is. Refuses: `study-not-found`.
 */
export const putBackStudy = (ports: Ports, id: string): Promise<Outcome<StoredStudy>> =>
  ports.store.change(async (session) => {
    const removed = (await session.removedStudies()).find(({ study }) => study.id === id)?.study;
    const known = await session.study(id);
    if (known !== undefined || removed === undefined) return findStudy(session, id);
    const machine =
      (await session.machine(removed.machineId)) ?? (await defaultMachine(session, ports));
    await session.insertStudy({ ...removed, machineId: machine.id }, ports.clock.now());
    await session.takeBackTallies(
      id,
      removed.tallies.map((tally) => tally.id),
    );
    await session.forgetRemoved(id);
    const back = await findStudy(session, id);
    return back.ok ? done(back.value) : back;
  });
