import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { RawProblem } from '../src/core/problem.ts';
import { figure, text, type ProblemList } from '../src/core/problems/param.ts';
import { shown } from '../src/words/shape/sentence.ts';
import { codesWithWords, problemInWords } from '../src/words/words.ts';

interface Listed {
  readonly area: string;
  readonly code: string;
  readonly params: RawProblem['params'];
}

/** Every code of every area with something for all that it carries, found on disk so that a new area is not forgotten. */
const listed: Listed[] = [];
const folder = join(import.meta.dirname, '../src/core/problems');
for (const area of readdirSync(folder).filter(
  (file) => !/^(all|param)\.ts$|\.test\.ts$/.test(file),
)) {
  const module = (await import(join(folder, area))) as Readonly<Record<string, ProblemList>>;
  const lists = Object.entries(module).filter(([name]) => name.endsWith('Problems'));
  const specs = lists.flatMap(([, list]) => Object.entries(list));
  // One list may hold another whole: `proofProblems` the remarks on a drawing.
  for (const [code, spec] of new Map(specs)) listed.push({ area, code, params: sample(spec) });
}

function sample(spec: ProblemList[string]): RawProblem['params'] {
  return Object.fromEntries(
    Object.entries(spec).map(([name, kind]) => [name, sampleOf(name, kind)]),
  );
}

function sampleOf(name: string, kind: ProblemList[string][string]): string | number {
  if (kind === figure) return 12.5;
  if (kind === text) return `some ${name}`;
  return 'maybe' in kind ? sampleOf(name, kind.maybe) : (kind.oneOf[0] ?? '');
}

describe('words for problems', () => {
  it('finds lists of problems at all', () => {
    expect(listed.length).toBeGreaterThan(300);
  });

  it.each(listed)('$code of $area has a message and a remedy in whole sentences', (problem) => {
    const words = problemInWords(problem);
    expect(codesWithWords()).toContain(problem.code);
    expect(words.message).toMatch(/\S[.?!]$/);
    expect(words.remedy).toMatch(/\S[.?!]$/);
    expect(`${words.message} ${words.remedy}`).not.toMatch(/undefined|NaN|\[object/);
  });

  it('lists no code twice', () => {
    const codes = listed.map(({ code }) => code);
    expect(codes.filter((code, at) => codes.indexOf(code) !== at)).toEqual([]);
  });

  it('words no code that nobody can raise', () => {
    const known = new Set(listed.map(({ code }) => code));
    expect(codesWithWords().filter((code) => !known.has(code))).toEqual([]);
  });

  it('says honestly that a code has no words, with all that is known of it', () => {
    const words = problemInWords({
      code: 'never-heard-of',
      params: { cell: 'B2', speedMmPerS: 17 },
    });
    expect(words.code).toBe('never-heard-of');
    expect(words.message).toContain('never-heard-of');
    expect(words.message).toContain('cell: B2, speedMmPerS: 17');
  });

  it('is not fooled by names that every object has', () => {
    expect(problemInWords({ code: 'constructor', params: {} }).message).toContain('no words yet');
  });
});

describe('what a sentence shows', () => {
  it('shows numbers without float dust, and text as it is', () => {
    expect(shown({ mean: 3.1000000001, count: 200, name: 'birch', odd: Number.NaN })).toEqual({
      mean: '3.1',
      count: '200',
      name: 'birch',
      odd: 'not a number',
    });
  });
});
