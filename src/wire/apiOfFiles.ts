import { z } from 'zod';
import { studyAnswerQuery } from './answer.ts';
import { wallListAddress } from './laterAddresses.ts';
import { route } from './route.ts';
import { byStudy } from './study.ts';
import { unitsWanted } from './unitsWanted.ts';

/** Routes that give files which the page only links to: they stand apart from `api`, which comes with the first view. */
export const apiOfFiles = {
  wallList: route({
    ...wallListAddress,
    summary: 'The kept settings by machine, to be printed and hung up',
    query: z.strictObject({ units: unitsWanted }),
  }),
  reasoningFile: route({
    method: 'GET',
    path: '/api/studies/:id/reasoning.pdf',
    least: 'reads-and-counts',
    summary: 'Why the answer is what it is, as one printable page',
    params: byStudy,
    query: studyAnswerQuery,
  }),
};
