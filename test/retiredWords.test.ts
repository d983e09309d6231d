import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '..');

/** Names that a thing has no longer, and turns that nobody at a machine would say. */
const retired =
  /\breckon\w*|\bdeliver(?:y|ies)\b(?! note)|\bpowers? in corners\b|\bstart speed\b|\bleast power setting\b|\b(?:sheet )?kept back\b|\bold sheet\b|\beven bet\b|\bthinness\b|\bmind this\b|\bframe the job\b|\bthe label lies\b/i;

/** Notes of whoever wrote it, which are for comments. */
const working = /\bpages? seen\b|\bunconfirmed\b|\bfrom memory\b/i;

const files = (folder: string, ending: RegExp): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => ending.test(file) && !/\.test\.tsx?$/.test(file))
    .map((file) => join(folder, file));

const read = (file: string): string => readFileSync(join(root, file), 'utf8');

/** What of a source file is in quotes and has a space in it: a sentence, and no name of the code. */
const sentencesOf = (file: string): string[] => {
  const code = read(file)
    .replaceAll(/\/\*[\s\S]*?\*\//g, '')
    .replaceAll(/(^|\s)\/\/.*$/gm, '$1');
  return [...code.matchAll(/'(?:[^'\\\n]|\\.)*'|`(?:[^`\\]|\\.)*`/g)]
    .map(([text]) => text.replaceAll(/\$\{[^}]*\}/g, '…'))
    .filter((text) => /\S \S/.test(text));
};

/** A page without its code, and without where its links lead. */
const proseOf = (file: string): string[] =>
  read(file)
    .replaceAll(/```[\s\S]*?```/g, '')
    .replaceAll(/`[^`\n]*`/g, '…')
    .replaceAll(/\]\([^)]*\)/g, ']')
    .split('\n');

const found = (file: string, texts: readonly string[], pattern: RegExp): string[] =>
  texts.filter((text) => pattern.test(text)).map((text) => `${file}: ${text.trim()}`);

describe('retired words', () => {
  it('are found where they stand', () => {
    expect(found('x', ['as we reckoned', 'what its delivery note says'], retired)).toEqual([
      'x: as we reckoned',
    ]);
    expect(sentencesOf('src/words/en/screens/reading.ts').length).toBeGreaterThan(10);
    expect(proseOf('README.md').length).toBeGreaterThan(20);
  });

  it('reach no reader of a screen, a command, a file or a page of the server', () => {
    const spoken = ['src/words', 'src/cli', 'src/print', 'src/http', 'src/wire', 'src/formats'];
    const texts = spoken.flatMap((folder) => files(folder, /\.ts$/));
    expect(texts.length).toBeGreaterThan(100);
    expect(texts.flatMap((file) => found(file, sentencesOf(file), retired))).toEqual([]);
  });

  it('stand in no page of the documents', () => {
    const pages = ['README.md', 'CHANGELOG.md', ...files('docs', /\.md$/)];
    expect(pages.length).toBeGreaterThan(20);
    expect(pages.flatMap((file) => found(file, proseOf(file), retired))).toEqual([]);
  });
});

describe('working notes', () => {
  it('stand in no sentence and no source that is shown', () => {
    const texts = ['src/words', 'src/core', 'src/print'].flatMap((folder) =>
      files(folder, /\.ts$/),
    );
    expect(texts.flatMap((file) => found(file, sentencesOf(file), working))).toEqual([]);
  });
});
