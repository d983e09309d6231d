import { done, type Outcome } from '../core/problem.ts';
import { exampleWorkshop } from '../core/virtual/exampleWorkshop.ts';
import { homeIn, type Home } from './home.ts';
import type { Ports } from './ports.ts';

/** Opens the invented example workshop beside whatever is there. Where it is open already nothing changes. */
export const openExample = ({ store, clock }: Ports): Promise<Outcome<Home>> =>
  store.change(async (session) => {
    const before = await homeIn(session);
    if (before.exampleOpen) return done(before);
    const { machines, studies, book, meterings, bedTests } = exampleWorkshop(clock.now());
    for (const machine of machines) await session.insertMachine(machine);
    for (const entry of book) await session.insertEntry(entry);
    for (const study of studies) await session.insertStudy(study, clock.now());
    for (const metering of meterings) await session.insertMetering(metering);
    for (const test of bedTests) await session.insertBedTest(test);
    return done(await homeIn(session));
  });
