import { useQuery } from '@tanstack/react-query';
import { pageApi } from '../../../wire/pageApi.ts';
import { callOrThrow } from '../../state/call.ts';

/** The name under which measured kerfs are remembered; whoever changes one forgets them. */
export const kerfTestsKey = ['kerf-tests'] as const;

export const useKerfTests = () =>
  useQuery({ queryKey: kerfTestsKey, queryFn: () => callOrThrow(pageApi.listKerfTests) });
