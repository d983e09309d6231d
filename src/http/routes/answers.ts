import type { FastifyInstance } from 'fastify';
import { answerCutStudy } from '../../app/answerCutStudy.ts';
import { answerStudy } from '../../app/answerStudy.ts';
import { nextCardWish, proposeNextCard } from '../../app/proposeNextCard.ts';
import type { Ports } from '../../app/ports.ts';
import type { FitAnswer, NextCardAnswer } from '../../core/cutmodel/fitAnswer.ts';
import { proposeNextCard as propose } from '../../core/cutmodel/nextCard.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { fitAnswerFile, nextCardFile } from '../../formats/answerFile.ts';
import { parseCutStudy } from '../../formats/studyFile.ts';
import { problemInWords } from '../../words/words.ts';
import { api } from '../../wire/api.ts';
import { on } from '../on.ts';

/** What a study says, stored or sent along. */
export const answerRoutes = (app: FastifyInstance, ports: Ports): void => {
  on(app, api.answerStudy, async ({ params }) => fitted(await answerStudy(ports, params.id)));
  on(app, api.proposeNextCard, async ({ params, query }) =>
    proposed(await proposeNextCard(ports, params.id, query)),
  );
  on(app, api.calcFit, ({ body }) => {
    const study = parseCutStudy(body);
    return Promise.resolve(study.ok ? fitted(done(answerCutStudy(study.value))) : study);
  });
  on(app, api.calcNextCard, ({ body }) => {
    const study = parseCutStudy(body);
    return Promise.resolve(
      study.ok ? proposed(done(propose(study.value, nextCardWish(study.value)))) : study,
    );
  });
};

const fitted = (answer: Outcome<FitAnswer>) =>
  answer.ok ? done(fitAnswerFile(answer.value, problemInWords)) : answer;

const proposed = (answer: Outcome<NextCardAnswer>) =>
  answer.ok ? done(nextCardFile(answer.value, problemInWords)) : answer;
