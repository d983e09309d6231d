import { describe, expect, it } from 'vitest';
import { aCard, aStudy } from '../../test/builders.ts';
import { sampleBedTest, sampleFocusTest, sampleMetering } from '../../test/samples/studies.ts';
import { problemInWords } from '../words/words.ts';
import { parseExportFile, type ExportFile } from './exportFile.ts';

const at = '2025-03-01T10:00:00.000Z';
const file = {
  kind: 'throughcut-export',
  version: 2,
  exportedAt: at,
  studies: [
    aStudy({
      cards: [aCard()],
      events: [
        { id: 'e1', cardCode: 'K7QX', at, kind: 'graded', cell: 'A1', grade: 'out' },
        { id: 'e2', cardCode: 'K7QX', at, kind: 'undone', eventId: 'e1' },
      ],
    }),
  ],
  book: [],
  tallies: [],
  meterings: [sampleMetering('m1')],
  focusTests: [sampleFocusTest('f1')],
  bedTests: [sampleBedTest('c1')],
};
const problemOf = (json: unknown) => {
  const parsed = parseExportFile(JSON.stringify(json));
  if (parsed.ok) throw new Error('it was accepted');
  return { ...parsed.problem, ...problemInWords(parsed.problem) };
};

describe('an export', () => {
  it('comes back whole', () => {
    const parsed = parseExportFile(`\ufeff${JSON.stringify(file)}`);
    const value: ExportFile | undefined = parsed.ok ? parsed.value : undefined;
    expect(value).toEqual(file);
  });

  it('of the first version has no meterings', () => {
    const { kind, exportedAt, studies, book, tallies } = file;
    const first = JSON.stringify({ kind, version: 1, exportedAt, studies, book, tallies });
    const parsed = parseExportFile(first);
    expect(parsed).toMatchObject({
      ok: true,
      value: { studies, meterings: [], focusTests: [], bedTests: [] },
    });
  });

  it('of an unknown version is refused in a sentence', () => {
    const problem = problemOf({ ...file, version: 9, shelves: [] });
    expect(problem.code).toBe('file-version-unknown');
    expect(problem.message).toBe('The version of this file is 9; known here: 1, 2.');
    expect(problem.remedy).toMatch(/newer Throughcut/);
  });

  it('says where it is not what it should be', () => {
    expect(problemOf({ ...file, shelves: [] })).toMatchObject({ code: 'file-key-unknown' });
    const [study] = file.studies;
    const events = [{ id: 'e1', cardCode: 'K7QX', at, kind: 'eaten', cell: 'A1' }];
    const problem = problemOf({ ...file, studies: [{ ...study, events }] });
    expect(problem.params['path']).toBe('studies[0].events[0].kind');
    expect(problem.message).toContain('"graded", "spoilt"');
    expect(problemOf([]).code).toBe('file-value-wrong-type');
    const cut = parseExportFile('{"kind":');
    expect(!cut.ok && cut.problem.code).toBe('file-not-json');
  });
});
