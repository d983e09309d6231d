import { useQuery } from '@tanstack/react-query';
import { pageApi } from '../../../wire/pageApi.ts';
import { callOrThrow } from '../../state/call.ts';

/** The name under which kept marks are remembered; whoever changes one forgets them. */
export const markTestsKey = ['mark-tests'] as const;

export const useMarkTests = () =>
  useQuery({ queryKey: markTestsKey, queryFn: () => callOrThrow(pageApi.listMarkTests) });
