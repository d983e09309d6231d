import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Plugin } from 'vite';

const root = join(import.meta.dirname, '../..');
const inPseudo = join(import.meta.dirname, 'inPseudo.ts');

/** Behind each door of the words, what it leads to. */
const doors = {
  'src/words/texts.ts': 'src/words/en/texts.ts',
  'src/words/sentences.ts': 'src/words/en/areas.ts',
} as const;

/** Figures and their units, which are no sentences and are said by whoever needs one. */
const figures = /\/terms\//;

/** The names of the values that a file exports, itself or from others; with whether they are words. */
const exportsOf = (file: string): (readonly [name: string, isWords: boolean])[] => {
  const source = readFileSync(file, 'utf8');
  const own = [...source.matchAll(/^export (?:const|function) (\w+)/gm)].map(
    ([, name = '']) => [name, !figures.test(file)] as const,
  );
  const others = [...source.matchAll(/^export \* from '(.+)';$/gm)];
  return [...own, ...others.flatMap(([, from = '']) => exportsOf(join(dirname(file), from)))];
};

/**
 * A second language, made of the first by wrapping all that it says. It stands behind the same doors, so that whatever is
 * said past them is seen to be in another language than the rest.
 */
export const pseudoLanguage = (): Plugin => ({
  name: 'pseudo-language',
  enforce: 'pre',
  resolveId(source, importer) {
    const door = Object.entries(doors).find(([from]) => importer === join(root, from));
    if (door === undefined || !source.startsWith('./en/')) return null;
    return `${join(root, door[1])}?pseudo`;
  },
  load(id) {
    if (!id.endsWith('?pseudo')) return null;
    const file = id.slice(0, -'?pseudo'.length);
    const lines = exportsOf(file).map(([name, isWords]) =>
      isWords
        ? `export const ${name} = inPseudo(english.${name});`
        : `export const ${name} = english.${name};`,
    );
    return [
      `import * as english from ${JSON.stringify(file)};`,
      `import { inPseudo } from ${JSON.stringify(inPseudo)};`,
      ...lines,
    ].join('\n');
  },
});
