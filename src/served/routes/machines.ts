import type { Ports } from '../../app/ports/ports.ts';
import { describeMachine } from '../../app/machine/describeMachine.ts';
import { listMachines } from '../../app/machine/listMachines.ts';
import { noteMachineChange } from '../../app/machine/noteMachineChange.ts';
import { removeMachine } from '../../app/machine/removeMachine.ts';
import { removeMachineChange } from '../../app/machine/removeMachineChange.ts';
import { done } from '../../core/problem.ts';
import { api } from '../../wire/api.ts';
import type { Site } from '../site.ts';

/** The machines of the workshop, and what was changed on them. */
export const machineRoutes = (site: Site, ports: Ports): void => {
  site.put(api.listMachines, async () => done({ machines: await listMachines(ports) }));
  site.put(api.describeMachine, ({ params, body }) => describeMachine(ports, params.id, body));
  site.put(api.removeMachine, async ({ params }) => {
    const removed = await removeMachine(ports, params.id);
    return removed.ok ? done({ removed: true }) : removed;
  });
  site.put(api.noteMachineChange, ({ params, body }) => noteMachineChange(ports, params.id, body));
  site.put(api.removeMachineChange, ({ params }) =>
    removeMachineChange(ports, params.id, params.changeId),
  );
};
