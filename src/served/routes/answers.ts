import { done, andThen } from '../../core/problem.ts';
import { fitAnswerFile, nextCardFile } from '../../formats/answerFile.ts';
import { parseCutStudy } from '../../formats/studyFile.ts';
import { standingOfCut } from '../../core/standing/standingOfCut.ts';
import { standingInWords } from '../../words/standingInWords.ts';
import { problemInWords } from '../../words/words.ts';
import { api } from '../../wire/api.ts';
import type { Site } from '../site.ts';
import type { ServedPorts } from '../servedPorts.ts';

/** What a study says, stored or sent along. */
export const answerRoutes = (site: Site, ports: ServedPorts): void => {
  site.put(api.answerStudy, async ({ params, query, gone }) => {
    const { answerStudy } = await import('../../app/sheet/answerStudy.ts');
    const answer = await answerStudy(ports.until(gone), params.id, query);
    if (!answer.ok) return answer;
    const { leansOn, standing, ...said } = answer.value;
    const file = fitAnswerFile(said, problemInWords, standingInWords(standing));
    return done({ ...file, leansOn });
  });
  site.put(api.gatherHistory, async ({ query: { of, ...wish } }) => {
    const { gatherHistory } = await import('../../app/sheet/gatherHistory.ts');
    return done({ sheets: await gatherHistory(ports, { ...wish, isExample: of === 'example' }) });
  });
  site.put(api.proposeNextCard, async ({ params, query, gone }) => {
    const { proposeNextCard } = await import('../../app/card/proposeNextCard.ts');
    const next = await proposeNextCard(ports.until(gone), params.id, query);
    return andThen(next, (card) => done(nextCardFile(card, problemInWords)));
  });
  site.put(api.calcFit, async ({ body, gone }) => {
    const study = parseCutStudy(body);
    if (!study.ok) return study;
    const answered = await ports.until(gone).model.ask('answerCutStudy', study.value);
    return andThen(answered, (answer) =>
      done(
        fitAnswerFile(answer, problemInWords, standingInWords(standingOfCut(study.value, answer))),
      ),
    );
  });
  site.put(api.calcNextCard, async ({ body, gone }) => {
    const study = parseCutStudy(body);
    if (!study.ok) return study;
    const { value } = study;
    const question = { study: value, wish: value, earlier: [] };
    const next = await ports.until(gone).model.ask('nextCard', question);
    return andThen(next, (card) => done(nextCardFile(card, problemInWords)));
  });
};
