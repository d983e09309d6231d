import type { Sentence } from '../sentence.ts';

/** What can go wrong between the page and the server. */
export const webWords = {
  'server-away': {
    message: () => 'The workshop computer does not answer.',
    remedy: () =>
      'Go on: everything that you tap is kept in this browser and is sent when it answers again.',
  },
  'reply-not-understood': {
    message: (p) =>
      `The workshop computer answered ${p('address')} in a way this page does not know.`,
    remedy: () => 'Reload the page: it is probably older than the program.',
  },
  'not-a-cell-name': {
    message: (p) => `There is no cell ${p('cell')} on this card.`,
    remedy: () => 'Use the letter and number that stand beside the shape.',
  },
} satisfies Record<string, Sentence>;
