import { useMutation, useQueryClient } from '@tanstack/react-query';
import { queryKeys } from '../../state/queries.ts';

/** A change of who is let in; what was asked before is asked anew. */
export const usePairingChange = <T, Q = void>(change: (asked: Q) => Promise<T>) => {
  const cache = useQueryClient();
  return useMutation({
    mutationFn: change,
    onSettled: () => cache.invalidateQueries({ queryKey: queryKeys.pairing }),
  });
};
