import type { RawProblem } from '../../core/problem.ts';
import { firstSentences, inUnitsShown } from '../../words/texts.ts';
import { wordsIn, type ProblemInWords } from '../../words/inWords.ts';
import { fetchPart } from './fetchPart.ts';

let speak = wordsIn(firstSentences);

let fetching: Promise<void> | undefined;

/**
 * Fetches the rest of the words, once: with the first thing that a person does, or with a screen that may need them, so
 * that the first view stays light.
 */
export const fetchTheRest = (): Promise<void> =>
  (fetching ??= fetchPart(() => import('../../words/sentences.ts')).then(({ sentences }) => {
    speak = wordsIn(sentences);
  }));

for (const doing of ['pointerdown', 'keydown', 'input', 'change'] as const) {
  document.addEventListener(doing, () => void fetchTheRest().catch(() => undefined), {
    capture: true,
    once: true,
  });
}

/** A figure and its unit, which are not to be parted at the end of a line. */
const figureAndUnit = /(\d) (?=(?:%|mm|in|mA|kPa|°C|min|s)(?![a-z]))/g;

/** A sentence, from wherever, with its figures in the reader's own units and each held to its unit. */
export const together = (text: string): string =>
  inUnitsShown(text).replace(figureAndUnit, '$1\u202f');

/** The same in the reader's own units, each figure held to its unit. */
export const heldTogether = ({ code, message, remedy }: ProblemInWords): ProblemInWords => ({
  code,
  message: together(message),
  remedy: together(remedy),
});

/** A problem as the page says it. */
export const problemInWords = (problem: RawProblem): ProblemInWords => heldTogether(speak(problem));
