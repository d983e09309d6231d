import type { FastifyInstance } from 'fastify';
import type { Ports } from '../../app/ports/ports.ts';
import { describeMachine } from '../../app/machine/describeMachine.ts';
import { listMachines } from '../../app/machine/listMachines.ts';
import { noteMachineChange } from '../../app/machine/noteMachineChange.ts';
import { removeMachine } from '../../app/machine/removeMachine.ts';
import { removeMachineChange } from '../../app/machine/removeMachineChange.ts';
import { done } from '../../core/problem.ts';
import { api } from '../../wire/api.ts';
import { on } from '../on.ts';

/** The machines of the workshop, and what was changed on them. */
export const machineRoutes = (app: FastifyInstance, ports: Ports): void => {
  on(app, api.listMachines, async () => done({ machines: await listMachines(ports) }));
  on(app, api.describeMachine, ({ params, body }) => describeMachine(ports, params.id, body));
  on(app, api.removeMachine, async ({ params }) => {
    const removed = await removeMachine(ports, params.id);
    return removed.ok ? done({ removed: true }) : removed;
  });
  on(app, api.noteMachineChange, ({ params, body }) => noteMachineChange(ports, params.id, body));
  on(app, api.removeMachineChange, ({ params }) =>
    removeMachineChange(ports, params.id, params.changeId),
  );
};
