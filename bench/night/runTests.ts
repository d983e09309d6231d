import { spawn } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import type { Figure } from './nightPart.ts';

export const root = join(import.meta.dirname, '../../..');
const reportFile = join(root, 'build/test-report.json');

const ended = (files: readonly string[], environment: NodeJS.ProcessEnv): Promise<unknown> =>
  new Promise((resolve) => {
    const child = spawn(process.execPath, ['node_modules/vitest/vitest.mjs', 'run', ...files], {
      cwd: root,
      env: { ...process.env, ...environment },
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    child.once('close', resolve);
  });

const report = z.object({
  numPassedTests: z.number(),
  testResults: z.array(
    z.object({
      name: z.string(),
      status: z.string(),
      assertionResults: z.array(z.object({ status: z.string(), fullName: z.string() })),
    }),
  ),
});

/** Runs test files, and tells how many ran, how many of their tests passed (`atLeast`) and what failed. */
export async function* runTests(
  files: readonly string[],
  {
    atLeast,
    environment = {},
  }: { readonly atLeast: number; readonly environment?: NodeJS.ProcessEnv },
): AsyncGenerator<Figure> {
  await ended(files, environment);
  const { testResults, numPassedTests } = report.parse(
    JSON.parse(await readFile(reportFile, 'utf8')),
  );
  yield { what: 'test files that ran', value: testResults.length, atLeast: files.length };
  yield { what: 'tests that passed', value: numPassedTests, atLeast };
  const failed = testResults
    .filter(({ status }) => status !== 'passed')
    .flatMap(({ name, assertionResults }) => [
      name,
      ...assertionResults.filter((one) => one.status === 'failed').map((one) => one.fullName),
    ]);
  yield { what: 'failures', value: failed.length, atMost: 0, cases: failed };
}
