import type { WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import type { Ports } from '../ports/ports.ts';

/** All machines as they were added, the example's among them where it is open. */
export const listMachines = ({
  store,
}: Pick<Ports, 'store'>): Promise<readonly WorkshopMachine[]> =>
  store.read((session) => session.machines());
