import { param } from '../../test/samples/param.ts';
import { describe, expect, it } from 'vitest';
import { aCard, aStudy } from '../../test/builders.ts';
import {
  sampleBedTest,
  sampleEntry,
  sampleFocusTest,
  sampleKerfTest,
  sampleMarkTest,
  sampleMachine,
  sampleMetering,
  savedStudy,
  selfDescribedStudy,
} from '../../test/samples/studies.ts';
import { undescribedMachine, type Machine } from '../core/machine/machine.ts';
import { exampleMachine } from '../core/virtual/exampleMachine.ts';
import { problemInWords } from '../words/words.ts';
import { parseExportFile, type ExportFile } from './exportFile.ts';

const at = '2025-03-01T10:00:00.000Z';
const study = aStudy({
  cards: [aCard()],
  events: [
    { id: 'e1', cardCode: 'K7QX', at, kind: 'graded', cell: 'A1', grade: 'out' },
    { id: 'e2', cardCode: 'K7QX', at, kind: 'undone', eventId: 'e1' },
  ],
});
const file = {
  kind: 'throughcut-export',
  version: 3,
  exportedAt: at,
  machines: [sampleMachine()],
  studies: [savedStudy(study)],
  book: [],
  tallies: [],
  meterings: [sampleMetering('m1')],
  focusTests: [sampleFocusTest('f1')],
  bedTests: [sampleBedTest('c1')],
  kerfTests: [sampleKerfTest('k1')],
  markTests: [sampleMarkTest('e1')],
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
    const { kind, exportedAt, book, tallies } = file;
    const studies = [selfDescribedStudy(study)];
    const first = JSON.stringify({ kind, version: 1, exportedAt, studies, book, tallies });
    const parsed = parseExportFile(first);
    expect(parsed).toMatchObject({
      ok: true,
      value: { version: 3, meterings: [], focusTests: [], bedTests: [] },
    });
  });

  it('of the second version gets its machines from what its sheets described', () => {
    const { kind, exportedAt, tallies, meterings } = file;
    const onDoor = (id: string, over: Partial<Machine>) =>
      selfDescribedStudy(aStudy({ id, machine: { ...undescribedMachine, name: 'door', ...over } }));
    const studies = [
      onDoor('newest', { maxPowerPct: 62 }),
      onDoor('older', { maxPowerPct: 90, ratedCurrentMa: 24 }),
      selfDescribedStudy(aStudy({ id: 'invented', machine: exampleMachine })),
    ];
    const bedTests = [sampleBedTest('newest', { machine: 'Door' })];
    const book = [
      sampleEntry('b1', { holdsFor: { ...sampleEntry('b1').holdsFor, machine: 'window' } }),
    ];
    const parsed = parseExportFile(
      JSON.stringify({ kind, version: 2, exportedAt, studies, book, tallies, meterings, bedTests }),
    );
    if (!parsed.ok) throw new Error(parsed.problem.code);
    const { machines, ...rest } = parsed.value;
    const found = machines.map(({ id, isDefault, machine }) => [id, isDefault, machine]);
    const bare = { ...undescribedMachine };
    expect(found).toEqual([
      ['machine-newest', true, { ...bare, name: 'door', maxPowerPct: 62, ratedCurrentMa: 24 }],
      ['machine-invented', false, bare],
      ['machine-b1', false, { ...bare, name: 'window' }],
    ]);
    expect(rest.studies.map(({ machineId }) => machineId)).toEqual([
      'machine-newest',
      'machine-newest',
      'machine-invented',
    ]);
    expect(rest.bedTests[0]?.machineId).toBe('machine-newest');
    expect(rest.book[0]?.holdsFor.machineId).toBe('machine-b1');
    expect(rest.meterings[0]?.machineId).toBe('machine-invented');
  });

  it('of an unknown version is refused in a sentence', () => {
    const problem = problemOf({ ...file, version: 9, shelves: [] });
    expect(problem.code).toBe('file-version-unknown');
    expect(problem.message).toBe('The version of this file is 9; known here: 3, 1, 2.');
    expect(problem.remedy).toMatch(/newer Throughcut/);
  });

  it('says where it is not what it should be', () => {
    expect(problemOf({ ...file, shelves: [] })).toMatchObject({ code: 'file-key-unknown' });
    const [saved] = file.studies;
    const events = [{ id: 'e1', cardCode: 'K7QX', at, kind: 'eaten', cell: 'A1' }];
    const problem = problemOf({ ...file, studies: [{ ...saved, events }] });
    expect(param(problem, 'path')).toBe('studies[0].events[0].kind');
    expect(problem.message).toContain('"graded", "edge"');
    expect(problemOf([]).code).toBe('file-value-wrong-type');
    const cut = parseExportFile('{"kind":');
    expect(!cut.ok && cut.problem.code).toBe('file-not-json');
  });
});
