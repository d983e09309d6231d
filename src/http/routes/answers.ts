import type { FastifyInstance } from 'fastify';
import type { Ports } from '../../app/ports.ts';
import { done, andThen } from '../../core/problem.ts';
import { fitAnswerFile, nextCardFile } from '../../formats/answerFile.ts';
import { parseCutStudy } from '../../formats/studyFile.ts';
import { problemInWords } from '../../words/words.ts';
import { api } from '../../wire/api.ts';
import { on } from '../on.ts';

/** What a study says, stored or sent along. The cut model is loaded when it is first asked: the server starts without. */
export const answerRoutes = (app: FastifyInstance, ports: Ports): void => {
  on(app, api.answerStudy, async ({ params, query }) => {
    const { answerStudy } = await import('../../app/answerStudy.ts');
    const answer = await answerStudy(ports, params.id, query);
    if (!answer.ok) return answer;
    const { leansOn, ...said } = answer.value;
    return done({ ...fitAnswerFile(said, problemInWords), leansOn });
  });
  on(app, api.gatherHistory, async ({ query: { of, ...wish } }) => {
    const { gatherHistory } = await import('../../app/gatherHistory.ts');
    return done({ sheets: await gatherHistory(ports, { ...wish, isExample: of === 'example' }) });
  });
  on(app, api.proposeNextCard, async ({ params, query }) => {
    const { proposeNextCard } = await import('../../app/proposeNextCard.ts');
    const next = await proposeNextCard(ports, params.id, query);
    return andThen(next, (card) => done(nextCardFile(card, problemInWords)));
  });
  on(app, api.calcFit, async ({ body }) => {
    const study = parseCutStudy(body);
    if (!study.ok) return study;
    const { answerCutStudy } = await import('../../app/answerCutStudy.ts');
    return andThen(answerCutStudy(study.value), (answer) =>
      done(fitAnswerFile(answer, problemInWords)),
    );
  });
  on(app, api.calcNextCard, async ({ body }) => {
    const study = parseCutStudy(body);
    if (!study.ok) return study;
    const { nextCardFor } = await import('../../app/proposeNextCard.ts');
    return andThen(nextCardFor(study.value, study.value), (card) =>
      done(nextCardFile(card, problemInWords)),
    );
  });
};
