import type { BedTest, UnkeptBedTest } from '../../core/bed/bedTest.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { ofItsMachine } from '../shared/machineOfTest.ts';
import type { Ports } from '../ports/ports.ts';
import { sameValue } from '../../core/sameValue.ts';

/** A reading of the four corners whose id and time may be left to the tool. */
export type BedTestToRecord = UnkeptBedTest & { readonly id?: string; readonly at?: string };

/**
 * Stores a reading of the four corners with its date, told or untold. The same one sent twice is stored once. Refuses:
 * `bed-test-id-taken`, `machine-not-found`.
 */
export const recordBedTest = (ports: Ports, asked: BedTestToRecord): Promise<Outcome<BedTest>> =>
  ports.store.change(async (session) => {
    const own = await ofItsMachine(session, ports, asked);
    if (!own.ok) return own;
    const test: BedTest = {
      ...own.value,
      version: 1,
      id: asked.id ?? ports.ids.newId(),
      at: asked.at ?? ports.clock.now(),
    };
    const known = await session.bedTest(test.id);
    if (known === undefined) {
      await session.insertBedTest(test);
      return done(test);
    }
    const compared = asked.at === undefined ? { ...test, at: known.at } : test;
    return sameValue(known, compared) ? done(known) : refused('bed-test-id-taken', { id: test.id });
  });
