import { done, type Outcome } from '../../core/problem.ts';
import { home, type Home } from './home.ts';
import type { AskingPorts } from '../ports/ports.ts';

/** Opens the invented example workshop beside whatever is there. Where it is open already nothing changes. */
export const openExample = async (ports: AskingPorts): Promise<Outcome<Home>> => {
  const { store, clock, model } = ports;
  if ((await store.read((session) => session.holds())).example) return done(await home(ports));
  const made = await model.ask('exampleWorkshop', clock.now());
  if (!made.ok) return made;
  const opened = await store.change(async (session) => {
    if ((await session.holds()).example) return done(undefined);
    const { machines, studies, book, meterings, bedTests } = made.value;
    for (const machine of machines) await session.insertMachine(machine);
    for (const entry of book) await session.insertEntry(entry);
    for (const study of studies) await session.insertStudy(study, clock.now());
    for (const metering of meterings) await session.insertMachineTest('metering', metering);
    for (const test of bedTests) await session.insertMachineTest('bed-test', test);
    return done(undefined);
  });
  return opened.ok ? done(await home(ports)) : opened;
};
