import type { QueryClient } from '@tanstack/react-query';
import type { WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import { queryKeys } from './queries.ts';

/** Puts what the server said of one machine among what is known of all. */
export const cacheMachine = (cache: QueryClient, machine: WorkshopMachine): void => {
  cache.setQueryData<readonly WorkshopMachine[]>(queryKeys.machines, (before = []) => {
    const others = before.map((each) =>
      machine.isDefault && each.isDefault ? { ...each, isDefault: false } : each,
    );
    return others.some(({ id }) => id === machine.id)
      ? others.map((each) => (each.id === machine.id ? machine : each))
      : [...others, machine];
  });
};
