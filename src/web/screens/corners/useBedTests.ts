import { useQuery } from '@tanstack/react-query';
import { pageApi } from '../../../wire/pageApi.ts';
import { callOrThrow } from '../../state/call.ts';

/** The name under which readings of the four corners are remembered; whoever changes one forgets them. */
export const bedTestsKey = ['bed-tests'] as const;

export const useBedTests = () =>
  useQuery({ queryKey: bedTestsKey, queryFn: () => callOrThrow(pageApi.listBedTests) });
