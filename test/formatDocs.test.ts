import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { beginMarks } from '../src/app/card/beginMarks.ts';
import { designMarkStrip } from '../src/app/card/designMarkStrip.ts';
import { tellEvenShades } from '../src/app/card/tellEvenShades.ts';
import { compareConditions } from '../src/core/compare/compareConditions.ts';
import { bookCsv } from '../src/formats/bookCsv.ts';
import { cellsCsv } from '../src/formats/cellsCsv.ts';
import { parseCompareFile } from '../src/formats/compareFile.ts';
import { parseEvenShades } from '../src/formats/evenShadesFile.ts';
import { parseExportFile } from '../src/formats/exportFile.ts';
import { parseMarkStripRequest } from '../src/formats/markStripRequestFile.ts';
import { parseMarksFile } from '../src/formats/marksFile.ts';
import { parseCutStudy } from '../src/formats/studyFile.ts';

const page = (name: string): string =>
  readFileSync(join(import.meta.dirname, '../docs/formats', name), 'utf8');
const example = (name: string): string => /```json\n([^`]+)```/.exec(page(name))?.[1] ?? '';

describe('the pages on file formats', () => {
  it('show a study file that is accepted as it stands', () => {
    const study: unknown = JSON.parse(example('study.md'));
    const parsed = parseCutStudy(study);
    expect(parsed).toMatchObject({ ok: true, value: { cellsWanted: 12 } });
    expect(parsed.ok && parsed.value.cells).toHaveLength(3);
  });

  it('show two conditions that are accepted and compared as they stand', () => {
    const parsed = parseCompareFile(JSON.parse(example('compare.md')));
    expect(parsed).toMatchObject({ ok: true, value: { names: { other: 'the new lens' } } });
    expect(parsed.ok && compareConditions(parsed.value.two).ok).toBe(true);
  });

  it('show a request for a marking strip that is accepted and made as it stands', () => {
    const request = parseMarkStripRequest(JSON.parse(example('marking-strip-request.md')));
    if (!request.ok) throw new Error(request.problem.code);
    const made = designMarkStrip(request.value.asked);
    expect(made.ok && made.value.strip.settings.length).toBe(8);
  });

  it('show marks and shades that are accepted and answered as they stand', () => {
    const marks = parseMarksFile(JSON.parse(example('marks.md')));
    if (!marks.ok) throw new Error(marks.problem.code);
    const begun = beginMarks(marks.value);
    expect(begun.ok && begun.value.score.ok && begun.value.engrave.ok).toBe(true);
    const shades = parseEvenShades(JSON.parse(example('shades.md')));
    if (!shades.ok) throw new Error(shades.problem.code);
    const told = tellEvenShades(shades.value);
    expect(told.ok && told.value.shades.length).toBe(4);
  });

  it('show an export that is accepted as it stands', () => {
    expect(parseExportFile(example('export.md')).ok).toBe(true);
  });

  it('name the columns of the tables, in order', () => {
    const named = (about: string): string =>
      [
        ...(new RegExp(`\\*\\*${about}\\*\\*.*`).exec(page('tables.md'))?.[0] ?? '').matchAll(
          /`([a-z0-9_]+)`/g,
        ),
      ]
        .map(([, column]) => column)
        .join(',');
    expect(named('The book')).toBe([...bookCsv([])].join('').trim());
    expect(named('Cells')).toBe([...cellsCsv([])].join('').trim());
  });
});
