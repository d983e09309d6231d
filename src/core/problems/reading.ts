import { text, type ProblemList } from './param.ts';

/** What can be the matter with what was said of a card. */
export const readingProblems = {
  'event-for-unknown-cell': { card: text, cell: text },
  'undo-of-unknown-event': { card: text, event: text },
} as const satisfies ProblemList;

export type ReadingCode = keyof typeof readingProblems;
