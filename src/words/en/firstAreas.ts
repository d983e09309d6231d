import { webWords } from './web.ts';

/**
 * What the page may have to say before it has fetched the words of every area (`areas.ts`): what went wrong on the way to
 * the server, which is then where no more words can be had from. What the server refuses it says itself. Kept small, since it
 * comes with the first view.
 */
export const firstSentences = webWords;
