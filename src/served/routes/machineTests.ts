import { listMachineTests } from '../../app/machine/listMachineTests.ts';
import { readMachineTest, type MachineTestRead } from '../../app/machine/readMachineTest.ts';
import {
  recordMachineTest,
  type MachineTestToRecord,
} from '../../app/machine/recordMachineTest.ts';
import { removeMachineTest } from '../../app/machine/removeMachineTest.ts';
import type { Ports } from '../../app/ports/ports.ts';
import { machineTests, type MachineTestName } from '../../core/machineTests.ts';
import { done } from '../../core/problem.ts';
import { listKey, testRoutes } from '../../wire/machineTestApi.ts';
import type { Site } from '../site.ts';
import { bedTestSaid } from '../testsSaid/bedTestSaid.ts';
import { focusTestSaid } from '../testsSaid/focusTestSaid.ts';
import { meteringSaid } from '../testsSaid/meteringSaid.ts';

/** Tests of machines, kept over time: every kind is listed, kept, read and removed alike. */
export const machineTestRoutes = (site: Site, ports: Ports): void => {
  for (const name of machineTests) routesOf(site, ports, name, said);
};

/** What is sent of one test, where it is more than the test itself. */
type Said<Name extends MachineTestName> = {
  readonly [One in Name]?: (read: MachineTestRead<One>) => object;
};

const said: Said<MachineTestName> = {
  metering: meteringSaid,
  'focus-test': focusTestSaid,
  'bed-test': bedTestSaid,
};

const routesOf = <Name extends MachineTestName>(
  site: Site,
  ports: Ports,
  name: Name,
  replies: Said<Name>,
): void => {
  const routes = testRoutes(name);
  const inReply: (read: MachineTestRead<Name>) => object =
    replies[name] ?? (({ test }) => ({ test }));
  site.put(routes.list, async () => done({ [listKey(name)]: await listMachineTests(ports, name) }));
  site.put(routes.record, async ({ body }) => {
    // Read by the shape of its kind.
    const recorded = await recordMachineTest(ports, name, body as MachineTestToRecord<Name>);
    return recorded.ok ? done(inReply(recorded.value)) : recorded;
  });
  site.put(routes.get, async ({ params: { id } }) => {
    const read = await readMachineTest(ports, name, id);
    return read.ok ? done(inReply(read.value)) : read;
  });
  site.put(routes.remove, async ({ params: { id } }) => {
    const removed = await removeMachineTest(ports, name, id);
    return removed.ok ? done({ removed: true }) : removed;
  });
};
