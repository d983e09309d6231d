import type { Problem } from '../../core/problem.ts';
import { firstAreas } from '../../words/en/firstAreas.ts';
import { wordsIn, type ProblemInWords } from '../../words/inWords.ts';
import { patiently } from './patiently.ts';

let speak = wordsIn(firstAreas);

let fetching = false;

/** The rest of the words is fetched with the first thing that a person does, so that the first view stays light. */
const fetchTheRest = (): void => {
  if (fetching) return;
  fetching = true;
  void patiently(() => import('../../words/en/laterAreas.ts')).then(({ laterAreas }) => {
    speak = wordsIn([...firstAreas, ...laterAreas]);
  });
};

for (const doing of ['pointerdown', 'keydown', 'input', 'change'] as const) {
  document.addEventListener(doing, fetchTheRest, { capture: true, once: true });
}

/** A problem as the page says it. */
export const problemInWords = (problem: Problem): ProblemInWords => speak(problem);
