import { param } from '../../test/samples/param.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { problemInWords } from '../words/words.ts';
import { cutStudyFile, parseCutStudy } from './studyFile.ts';

const minimal = { version: 1, stock: { material: 'plywood', thicknessMm: 3.1 } };
const cell = { powerPct: 34, speedMmPerS: 17, grade: 'out' };

const problemOf = (json: unknown) => {
  const outcome = parseCutStudy(json);
  if (outcome.ok) throw new Error('it was accepted');
  return outcome.problem;
};
const study = (json: unknown) => {
  const outcome = parseCutStudy(json);
  if (!outcome.ok) throw new Error(problemInWords(outcome.problem).message);
  return outcome.value;
};

describe('a study file', () => {
  it('may say very little, and the rest is what the format promises', () => {
    expect(study(minimal)).toEqual({
      version: 1,
      machine: { maxPowerPct: 100, speedRangeMmPerS: [1, 100] },
      stock: { material: 'plywood', thicknessMm: 3.1 },
      cells: [],
      tallies: [],
      promise: { outOf100: 97, surePct: 95, partLengthMm: 60, for: 'batch' },
      ask: {},
    });
    expect(study({ ...minimal, cells: [cell], promise: { surePct: 90 } })).toMatchObject({
      cells: [{ powerPct: 34, speedMmPerS: 17, passes: 1, grade: 'out' }],
      promise: { outOf100: 97, surePct: 90 },
    });
  });

  it('reads everything that the format knows', () => {
    const all = study({
      version: 1,
      machine: {
        ratedCurrentMa: 24,
        tubePoints: [
          { powerPct: 60, currentMa: 18 },
          { powerPct: 20, currentMa: 5.3 },
        ],
        maxPowerPct: 80,
        speedRangeMmPerS: [1, 100],
        powerRampStartMmPerS: 5,
      },
      stock: { material: 'plywood', thicknessMm: 3.1 },
      cells: [
        {
          powerPct: 34,
          speedMmPerS: 17,
          passes: 1,
          minPowerPct: 34,
          air: { kPa: 100 },
          batch: 'A',
          sheet: 'A-1',
          thicknessMm: 3.1,
          shapeLengthMm: 60,
          spoilt: 'glue-pocket',
          grade: 'out',
        },
      ],
      tallies: [
        {
          powerPct: 34,
          speedMmPerS: 16,
          out: 197,
          hangs: 2,
          stays: 0,
          spoilt: 1,
          partLengthMm: 160,
          batch: 'A',
          sheet: 'A-2',
        },
      ],
      habit: { powerPct: 34, speedMmPerS: 16, comesOut: 'always' },
      promise: { outOf100: 97, surePct: 95, partLengthMm: 60, for: 'batch' },
      ask: { powerPct: 34 },
      cellsWanted: 12,
      settingsAtMost: 6,
    });
    expect(all.machine.tubePoints?.map(({ powerPct }) => powerPct)).toEqual([20, 60]);
    expect(all.tallies[0]?.setting).toEqual({ powerPct: 34, speedMmPerS: 16, passes: 1 });
    expect([all.cellsWanted, all.settingsAtMost]).toEqual([12, 6]);
    // spoilt outranks the grade beside it
    expect(all.cells[0]).not.toHaveProperty('grade');
    expect(parseCutStudy(cutStudyFile(all))).toEqual({ ok: true, value: all });
  });

  it.each([
    [null, 'file-value-wrong-type', 'the file'],
    [[], 'file-value-wrong-type', 'the file'],
    [{ ...minimal, version: 2, speed: 1 }, 'file-version-unknown', 'version'],
    [{ stock: minimal.stock }, 'file-version-unknown', 'version'],
    [{ version: 1 }, 'file-value-missing', 'stock'],
    [{ ...minimal, cels: [] }, 'file-key-unknown', 'the file'],
    [{ ...minimal, cells: [cell, { ...cell, speed: 3 }] }, 'file-key-unknown', 'cells[1]'],
    [{ ...minimal, cells: [{ powerPct: 34 }] }, 'file-value-missing', 'cells[0].speedMmPerS'],
    [
      { ...minimal, cells: [{ ...cell, speedMmPerS: '17' }] },
      'file-value-wrong-type',
      'cells[0].speedMmPerS',
    ],
    [
      { ...minimal, cells: [{ ...cell, speedMmPerS: 0 }] },
      'file-value-too-small',
      'cells[0].speedMmPerS',
    ],
    [
      { ...minimal, cells: [{ ...cell, speedMmPerS: Infinity }] },
      'file-value-wrong-type',
      'cells[0].speedMmPerS',
    ],
    [
      { ...minimal, cells: [{ ...cell, powerPct: 101 }] },
      'file-value-too-big',
      'cells[0].powerPct',
    ],
    [
      { ...minimal, cells: [{ ...cell, powerPct: 0 }] },
      'file-value-not-above',
      'cells[0].powerPct',
    ],
    [
      { ...minimal, cells: [{ ...cell, minPowerPct: 50 }] },
      'file-value-refused',
      'cells[0].minPowerPct',
    ],
    [{ ...minimal, cells: [{ ...cell, passes: 1.5 }] }, 'file-value-wrong-type', 'cells[0].passes'],
    [{ ...minimal, cells: [{ ...cell, air: 'on' }] }, 'file-value-not-allowed', 'cells[0].air'],
    [
      { ...minimal, cells: [{ ...cell, air: { kPa: -1 } }] },
      'file-value-too-small',
      'cells[0].air.kPa',
    ],
    [{ ...minimal, cells: [{ ...cell, grade: 'in' }] }, 'file-value-not-allowed', 'cells[0].grade'],
    [{ ...minimal, cells: [{ ...cell, batch: '' }] }, 'file-text-empty', 'cells[0].batch'],
    [{ ...minimal, tallies: [{ ...cell, out: 3 }] }, 'file-key-unknown', 'tallies[0]'],
    [
      { ...minimal, tallies: [{ powerPct: 30, speedMmPerS: 10, out: -1 }] },
      'file-value-too-small',
      'tallies[0].out',
    ],
    [
      { ...minimal, machine: { speedRangeMmPerS: [100, 1] } },
      'file-value-refused',
      'machine.speedRangeMmPerS',
    ],
    [
      { ...minimal, machine: { speedRangeMmPerS: [1] } },
      'file-list-too-short',
      'machine.speedRangeMmPerS',
    ],
    [{ ...minimal, promise: { outOf100: 100 } }, 'file-value-not-below', 'promise.outOf100'],
    [
      { ...minimal, cells: Array.from({ length: 5001 }, () => cell) },
      'file-list-too-long',
      'cells',
    ],
  ])('refuses %j as %s at %s', (json, code, path) => {
    const problem = problemOf(json);
    expect(problem.code).toBe(code);
    expect(param(problem, 'path')).toBe(path);
    const { message, remedy } = problemInWords(problem);
    expect(message.toLowerCase()).toContain(path.toLowerCase());
    expect(remedy).not.toMatch(/not given/);
  });

  it('guesses what a wrong key was meant to be', () => {
    const hint = (json: object) => param(problemOf({ ...minimal, ...json }), 'hint');
    expect(hint({ cels: [] })).toBe('cells');
    expect(hint({ cells: [{ ...cell, speed: 3 }] })).toBe('speedMmPerS');
    expect(hint({ cells: [{ ...cell, shape_length_mm: 3 }] })).toBe('shapeLengthMm');
    expect(hint({ cells: [{ ...cell, colour: 3 }] })).toBe('');
  });

  it('says what would have been allowed', () => {
    const problem = problemOf({ ...minimal, cells: [{ ...cell, air: 'on' }] });
    expect(problemInWords(problem).message).toBe(
      'cells[0].air is "on", which is none of: "off", "pump", { "kPa": … }.',
    );
  });

  it('answers every JSON value with a study or a problem, never with an exception', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (a, b) => {
        for (const json of [
          a,
          { ...minimal, cells: a },
          { ...minimal, cells: [{ ...cell, air: a }], machine: b },
        ]) {
          const outcome = parseCutStudy(json);
          if (!outcome.ok)
            expect(problemInWords(outcome.problem).message).not.toMatch(/not given|no words/);
        }
      }),
    );
  });

  it('comes back the same from its own file', () => {
    const cells = fc.array(
      fc.record(
        {
          powerPct: fc.double({ min: 0.5, max: 100, noNaN: true }),
          speedMmPerS: fc.double({ min: 0.1, max: 1000, noNaN: true }),
          passes: fc.integer({ min: 1, max: 5 }),
          air: fc.constantFrom('off' as const, 'pump' as const, { kPa: 140 }),
          sheet: fc.constantFrom('A-1', 'A-2'),
          grade: fc.constantFrom('out' as const, 'hangs' as const, 'stays' as const),
        },
        { requiredKeys: ['powerPct', 'speedMmPerS', 'passes'] },
      ),
    );
    fc.assert(
      fc.property(cells, (drawn) => {
        const given = study({ ...minimal, cells: drawn });
        expect(study(JSON.parse(JSON.stringify(cutStudyFile(given))))).toEqual(given);
      }),
    );
  });
});
