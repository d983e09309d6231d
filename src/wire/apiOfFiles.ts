import { studyAnswerQuery } from './answer.ts';
import { route } from './route.ts';
import { byStudy } from './study.ts';

/** Routes that give files which the page only links to: they stand apart from `api`, which comes with the first view. */
export const apiOfFiles = {
  reasoningFile: route({
    method: 'GET',
    path: '/api/studies/:id/reasoning.pdf',
    summary: 'Why the answer is what it is, as one printable page',
    params: byStudy,
    query: studyAnswerQuery,
  }),
};
