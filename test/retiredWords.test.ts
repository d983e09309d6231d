import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { designCard } from '../src/core/card/designCard.ts';
import { jobSheet } from '../src/core/card/jobSheet.ts';
import { explainStudy } from '../src/core/explain/explain.ts';
import { jobSheetPdf } from '../src/print/jobSheetPdf.ts';
import { pageBesidePdf } from '../src/print/pageBesidePdf.ts';
import { reasoningPdf } from '../src/print/reasoningPdf.ts';
import { demoRequest } from './fixtures/cardRequest.ts';
import { textOfPdf } from './fixtures/textOfPdf.ts';
import { pagesBeside } from './samples/pagesBeside.ts';
import { plainStudy } from './plainStudy.ts';
import { testServer } from './samples/server.ts';

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

/** What stands between two tags: words of a screen or of a picture. */
const textsOf = (file: string): string[] =>
  [...read(file).matchAll(/>([^<>{}]*[A-Za-z][^<>{}]*)</g)].map(([, text = '']) => text);

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
    const spoken = ['words', 'cli', 'print', 'http', 'wire', 'formats', 'web'];
    const texts = spoken.flatMap((folder) => files(`src/${folder}`, /\.tsx?$/));
    expect(texts.length).toBeGreaterThan(300);
    expect(texts.flatMap((file) => found(file, sentencesOf(file), retired))).toEqual([]);
    const screens = texts.filter((file) => file.endsWith('.tsx'));
    expect(screens.flatMap((file) => found(file, textsOf(file), retired))).toEqual([]);
  });

  it('stand in no picture that was drawn and kept', () => {
    const pictures = [...files('test/golden', /\.svg$/), ...files('docs', /\.svg$/)];
    expect(pictures.length).toBeGreaterThan(4);
    const said = pictures.map((file) => ({ file, texts: textsOf(file) }));
    expect(said.flatMap(({ texts }) => texts).length).toBeGreaterThan(4);
    expect(said.flatMap(({ file, texts }) => found(file, texts, retired))).toEqual([]);
  });

  it('name nothing that the code exports', () => {
    const code = files('src', /\.tsx?$/);
    const names = code.flatMap((file) =>
      [...read(file).matchAll(/^export (?:const|function|class|interface|type) (\w+)/gm)].map(
        ([, name = '']) => `${file}: ${name}`,
      ),
    );
    expect(names.length).toBeGreaterThan(1000);
    expect(names.filter((name) => /: \w*(?:reckon|powerInCorner|leastPower)/i.test(name))).toEqual(
      [],
    );
  });

  it('stand in no page of the documents', () => {
    const pages = ['README.md', 'CHANGELOG.md', ...files('docs', /\.md$/)];
    expect(pages.length).toBeGreaterThan(20);
    expect(pages.flatMap((file) => found(file, proseOf(file), retired))).toEqual([]);
  });
});

/** The same where a text has come to be without its spaces. */
const packed = new RegExp(
  retired.source.replaceAll('\\b', '').replaceAll(' ', '').replaceAll('\\w*', ''),
  'i',
);

describe('retired words in what is made when it is asked for', () => {
  it('are found where a page has no spaces', () => {
    expect(packed.test('aswereckonedit')).toBe(true);
    expect(packed.test('deliverynote')).toBe(false);
    expect(packed.test('Mindthis')).toBe(true);
  });

  it('stand on no printed page', async () => {
    const madeAt = '2031-04-05T06:07:08.000Z';
    const besides = await pagesBeside();
    const cards = (['speed', 'power', 'passes', 'corners'] as const).map((vary) =>
      designCard({ ...demoRequest, vary }),
    );
    const cells = [12, 14, 16, 18, 20].map((speedMmPerS, i) => ({
      powerPct: 30,
      speedMmPerS,
      grade: i < 3 ? ('out' as const) : ('stays' as const),
    }));
    const study = plainStudy({ cells, ask: { powerPct: 30 } });
    const pages = [
      ...cards.map((made) => {
        if (!made.ok) throw new Error(made.problem.code);
        return jobSheetPdf(jobSheet(made.value.card), { stock: '3 mm plywood', madeAt });
      }),
      ...besides.map((page) => pageBesidePdf(page, { madeAt })),
      reasoningPdf(study, explainStudy(study), { stock: '3 mm plywood', version: '1.0.0', madeAt }),
    ];
    const texts = (await Promise.all(pages)).map(textOfPdf);
    expect(texts.every((text) => text.length > 500)).toBe(true);
    expect(texts.flatMap((text) => packed.exec(text) ?? [])).toEqual([]);
  });

  it('stand neither on the page of the routes nor in their description for programs', async () => {
    const server = await testServer();
    try {
      for (const url of ['/api/docs', '/api/openapi.json']) {
        const { body } = await server.app.inject({ url, headers: { host: '127.0.0.1:4870' } });
        expect(body.length).toBeGreaterThan(2000);
        // Names of fields are for programs: only what is said of them is read.
        const said = url.endsWith('.json')
          ? [...body.matchAll(/"(?:summary|description|title)":"((?:[^"\\]|\\.)*)"/g)]
          : [...body.matchAll(/>([^<>]*[A-Za-z][^<>]*)</g)];
        expect(said.length).toBeGreaterThan(50);
        expect(
          found(
            url,
            said.map(([, text = '']) => text),
            retired,
          ),
        ).toEqual([]);
      }
    } finally {
      await server.close();
    }
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
