import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { areas } from '../src/words/en/areas.ts';
import { fillFrom } from '../src/words/sentence.ts';
import { codesWithWords, problemInWords } from '../src/words/words.ts';

const src = join(import.meta.dirname, '../src');
const sources = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter(
  (file) => /\.tsx?$/.test(file) && !/\.test\.tsx?$/.test(file),
);

/** Every `codes.ts` and `…Codes.ts` of every layer, found on disk so that a new one cannot be forgotten here. */
const listed: { file: string; code: string }[] = [];
for (const file of sources.filter((name) => /(^|\/)(codes|\w+Codes)\.ts$/.test(name))) {
  const module: unknown = await import(join(src, file));
  const lists: unknown[] = Object.values(module as object).filter((value) => Array.isArray(value));
  for (const code of new Set(lists.flat())) listed.push({ file, code: String(code) });
}
const listedCodes = new Set(listed.map(({ code }) => code));

describe('words for problems', () => {
  it('finds code lists at all', () => {
    expect(listed.length).toBeGreaterThan(0);
  });

  it.each(listed)('$code of $file has a message and a remedy in whole sentences', ({ code }) => {
    const words = problemInWords({ code, params: {} });
    expect(codesWithWords()).toContain(code);
    expect(words.message).toMatch(/\S[.?!]$/);
    expect(words.remedy).toMatch(/\S[.?!]$/);
    expect(`${words.message} ${words.remedy}`).not.toMatch(/undefined|NaN|\[object/);
  });

  it('lists no code twice and words no code twice', () => {
    const codes = listed.map(({ code }) => code);
    expect(codes.filter((code, at) => codes.indexOf(code) !== at)).toEqual([]);
    const worded = areas.flatMap((area) => Object.keys(area));
    expect(worded.filter((code, at) => worded.indexOf(code) !== at)).toEqual([]);
  });

  it('words no code that nobody can raise', () => {
    expect(codesWithWords().filter((code) => !listedCodes.has(code))).toEqual([]);
  });

  it('knows every code that the sources raise', () => {
    const raised = sources.flatMap((file) =>
      [...readFileSync(join(src, file), 'utf8').matchAll(/refused\(\s*'([^']+)'/g)].map(
        ([, code]) => ({ file, code }),
      ),
    );
    expect(raised.filter(({ code }) => !listedCodes.has(code ?? ''))).toEqual([]);
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

describe('filling a sentence', () => {
  const p = fillFrom({ mean: 3.1000000001, count: 200, name: 'birch', odd: Number.NaN });
  it('shows numbers without float dust, text as it is, and says what is missing', () => {
    expect([p('mean'), p('count'), p('name'), p('odd'), p('none')]).toEqual([
      '3.1',
      '200',
      'birch',
      'not a number',
      '(not given)',
    ]);
  });
});
