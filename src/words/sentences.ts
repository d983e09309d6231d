/** The door to the sentences of all problems, which the page fetches once it may need them (`texts.ts` has the rest). */
export { sentences } from './en/areas.ts';
