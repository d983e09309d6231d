/** What can be the matter with what was said of a card. */
export const readingCodes = ['event-for-unknown-cell', 'undo-of-unknown-event'] as const;

export type ReadingCode = (typeof readingCodes)[number];
