import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Figure, NightPart } from './nightPart.ts';
import { root, runTests } from './runTests.ts';

/** Test files that try a tenth of their cases for a commit: those that name the file which says so. */
const sampledFiles = async (): Promise<readonly string[]> => {
  const found: string[] = [];
  for (const room of ['src', 'bench', 'test'])
    for (const path of await readdir(join(root, room), { recursive: true }))
      if (path.endsWith('.test.ts')) {
        const file = join(room, path);
        if ((await readFile(join(root, file), 'utf8')).includes('/everyCase.ts')) found.push(file);
      }
  return found;
};

/** The tests of a commit that try a tenth of their cases, with all of them. */
export const casesPart: NightPart = {
  name: 'cases',
  about: 'every case of the tests that try a tenth of them for a commit',
  run: async function* (): AsyncIterable<Figure> {
    const files = await sampledFiles();
    yield { what: 'test files', value: files.length, atLeast: 1 };
    yield* runTests(files, { atLeast: 1, environment: { THROUGHCUT_EVERY_CASE: '1' } });
  },
};
