/** Every case is tried by `npm run night -- cases`; a commit waits for a tenth of them, by the same code. */
const isEvery = process.env['THROUGHCUT_EVERY_CASE'] === '1';

/** Of a list of cases: the first and every tenth after it, and the last. At night all of them. */
export const someOf = <T>(all: readonly T[]): readonly T[] =>
  isEvery ? all : all.filter((_, i) => i % 10 === 0 || i === all.length - 1);

/** Of so many drawn cases, or of so long a text: a tenth. At night all of it. */
export const tenthOf = (whole: number): number => (isEvery ? whole : Math.ceil(whole / 10));
