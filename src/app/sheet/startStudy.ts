import type { Machine } from '../../core/machine/machine.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { defaultPromise, type PromiseWish } from '../../core/reading/promise.ts';
import type { Habit } from '../../core/reading/tally.ts';
import type { Stock } from '../../core/stock/stock.ts';
import type { Study } from '../../core/study/study.ts';
import type { Aim } from '../../core/cutmodel/aims.ts';
import type { Ask } from '../../core/cutmodel/cutStudy.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import { machineDescribedAs, machineFor } from '../shared/machineOf.ts';
import type { Ports } from '../ports/ports.ts';
import type { StoredStudy } from '../ports/stored.ts';

export interface StartStudy {
  /** Made by whoever began it, perhaps while out of reach of the server. */
  readonly id?: string;
  readonly createdAt?: string;
  readonly stock: Stock;
  /** Absent: the default machine. */
  readonly machineId?: string;
  /** A description instead of an id: the machine that it means (`machineDescribedAs`). */
  readonly machine?: Machine;
  readonly promise?: PromiseWish;
  readonly aim?: Aim;
  readonly ask?: Ask;
  readonly habit?: Habit;
}

/**
 * Begins a study: only the sheet is needed, the rest is asked when it changes an answer. Where the id is known, the
 * study that has it is given back unchanged, so that a study begun out of reach may be sent twice.
 * Refuses: a refused material, `machine-not-found`, `machine-is-invented`.
 */
export const startStudy = async (
  ports: Ports,
  asked: StartStudy,
): Promise<Outcome<StoredStudy>> => {
  const { store, clock, ids } = ports;
  const accepted = acceptMaterial(asked.stock);
  if (!accepted.ok) return accepted;
  const id = asked.id ?? ids.newId();
  const now = clock.now();
  return store.change(async (session) => {
    const known = await session.study(id);
    if (known !== undefined) return done(known);
    const machine =
      asked.machineId === undefined && asked.machine !== undefined
        ? done(await machineDescribedAs(session, ports, asked.machine))
        : await machineFor(session, ports, asked.machineId);
    if (!machine.ok) return machine;
    const study: Study = {
      version: 1,
      id,
      isExample: false,
      createdAt: asked.createdAt ?? now,
      stock: asked.stock,
      machineId: machine.value.id,
      machine: machine.value.machine,
      machineChanges: machine.value.changes,
      promise: asked.promise ?? defaultPromise,
      aim: asked.aim ?? 'fastest',
      ask: asked.ask ?? {},
      ...(asked.habit === undefined ? {} : { habit: asked.habit }),
      tallies: [],
      cards: [],
      events: [],
    };
    await session.insertStudy(study, now);
    return done({ study, revision: 1, touchedAt: now });
  });
};
