import { spawn } from 'node:child_process';
import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import type { Figure, NightPart } from './nightPart.ts';

const root = join(import.meta.dirname, '../../..');
const reportFile = join(root, 'build/test-report.json');

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

const ended = (files: readonly string[]): Promise<unknown> =>
  new Promise((resolve) => {
    const child = spawn(process.execPath, ['node_modules/vitest/vitest.mjs', 'run', ...files], {
      cwd: root,
      env: { ...process.env, THROUGHCUT_EVERY_CASE: '1' },
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    child.once('close', resolve);
  });

const report = z.object({
  numPassedTests: z.number(),
  numFailedTests: z.number(),
  testResults: z.array(
    z.object({
      name: z.string(),
      status: z.string(),
      assertionResults: z.array(z.object({ status: z.string(), fullName: z.string() })),
    }),
  ),
});

/** The tests of a commit that try a tenth of their cases, with all of them. */
export const casesPart: NightPart = {
  name: 'cases',
  about: 'every case of the tests that try a tenth of them for a commit',
  run: async function* (): AsyncIterable<Figure> {
    const files = await sampledFiles();
    yield { what: 'test files', value: files.length, atLeast: 1 };
    await ended(files);
    const { testResults, numPassedTests } = report.parse(
      JSON.parse(await readFile(reportFile, 'utf8')),
    );
    yield { what: 'test files that ran', value: testResults.length, atLeast: files.length };
    yield { what: 'tests that passed', value: numPassedTests, atLeast: 1 };
    const failed = testResults
      .filter(({ status }) => status !== 'passed')
      .flatMap(({ name, assertionResults }) => [
        name,
        ...assertionResults.filter((one) => one.status === 'failed').map((one) => one.fullName),
      ]);
    yield { what: 'failures', value: failed.length, atMost: 0, cases: failed };
  },
};
