/**
 * The door to everything that is said, but for the sentences of problems (`words.ts`): a screen, a route, a page or a
 * command asks here and never a language by its name. Which language is spoken stands here and in `sentences.ts`.
 */
export * from './en/texts.ts';
