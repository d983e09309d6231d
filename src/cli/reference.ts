import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { z } from 'zod';

import { done, problemOf, refused, type Outcome, type Problem } from '../core/problem.ts';
import { problemInWords } from '../words/words.ts';
import { compare, plain, type Mismatch } from './reference/compare.ts';
import {
  referenceFile,
  type ReferenceCase,
  type ReferenceFile,
} from './reference/referenceFile.ts';
import { topics } from './reference/registry.ts';

/**
 * Answers each case of the reference files with the project's own functions and writes one line of JSON a case, last a
 * summary. Where files say what to expect, `pass` says whether it came out so; a case that the project has no function
 * for is written as unknown.
 *
 * @param files paths, relative ones from where the user called.
 * @returns 0, or 1 when a case failed, or 2 when a file or a case could not be read.
 */
export const runReference = async (
  files: readonly string[],
  write: (line: string) => void,
): Promise<0 | 1 | 2> => {
  const say = (value: object): void => write(JSON.stringify(value));
  const read = await Promise.all(files.map(readReferenceFile));
  const broken = read.find((outcome) => !outcome.ok);
  if (files.length === 0 || broken?.ok === false) {
    const problem = broken?.ok === false ? broken.problem : problemOf('reference-no-file');
    say({ error: problemInWords(problem) });
    return 2;
  }
  const lines = read.flatMap((outcome) => (outcome.ok ? answerFile(outcome.value) : []));
  for (const line of lines) {
    const { mismatches, ...shown } = line;
    say(shown);
    for (const mismatch of mismatches ?? []) reportMismatch(line.name, mismatch);
  }
  const passed = lines.filter((line) => line.pass === true).length;
  say({ summary: { cases: lines.length, passed } });
  if (lines.some((line) => line.error !== undefined)) return 2;
  return lines.some((line) => line.pass === false) ? 1 : 0;
};

/** What is said of one case. */
interface CaseLine {
  readonly id: string;
  readonly name: string;
  readonly got?: unknown;
  readonly pass?: boolean | null;
  readonly unknown?: true;
  readonly error?: object;
  readonly mismatches?: readonly Mismatch[];
}

const readReferenceFile = async (file: string): Promise<Outcome<ReferenceFile>> => {
  const path = resolve(process.env['INIT_CWD'] ?? process.cwd(), file);
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch {
    return refused('reference-file-not-found', { file });
  }
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return refused('reference-file-not-json', { file });
  }
  const parsed = referenceFile.safeParse(json);
  return parsed.success
    ? done(parsed.data)
    : refused('reference-file-of-other-form', { file, where: firstIssue(parsed.error) });
};

const answerFile = (file: ReferenceFile): readonly CaseLine[] =>
  file.cases.map((one) => answerCase(file, one));

const answerCase = ({ id, data }: ReferenceFile, one: ReferenceCase): CaseLine => {
  const { name, input, expected } = one;
  const topic = Object.hasOwn(topics, id) ? topics[id] : undefined;
  if (topic === undefined) return { id, name, unknown: true };
  let got: unknown;
  try {
    got = plain(topic.answer(input, data));
  } catch (thrown) {
    return { id, name, got: null, pass: false, error: problemInWords(asProblem(thrown, name)) };
  }
  if (got === undefined) return { id, name, unknown: true };
  const tolerance = topic.tolerance?.(expected, one.tolerance) ?? one.tolerance;
  if (expected === undefined || expected === null || tolerance === undefined) {
    return { id, name, got, pass: null };
  }
  const { compared, mismatches } = compare(got, expected, tolerance);
  return { id, name, got, pass: compared > 0 && mismatches.length === 0, mismatches };
};

/** Input that a schema or a function refuses is the file's fault; anything else is ours and is thrown on. */
const asProblem = (thrown: unknown, name: string): Problem => {
  if (thrown instanceof z.ZodError) {
    return problemOf('reference-case-of-other-form', { name, where: firstIssue(thrown) });
  }
  if (thrown instanceof RangeError) {
    return problemOf('reference-case-of-other-form', { name, where: thrown.message });
  }
  throw thrown;
};

const firstIssue = ({ issues }: z.ZodError): string => {
  const [issue] = issues;
  return issue === undefined ? '' : `${issue.path.map(String).join('.')}: ${issue.message}`;
};

const reportMismatch = (name: string, { path, got, expected }: Mismatch): void => {
  process.stderr.write(
    `${name}: ${path} is ${JSON.stringify(got)}, expected ${JSON.stringify(expected)}\n`,
  );
};
