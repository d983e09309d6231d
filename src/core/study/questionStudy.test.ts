import { describe, expect, it } from 'vitest';
import { aStudy } from '../../../test/builders.ts';
import type { CutStudy, StudyCell } from '../cutmodel/cutStudy.ts';
import { questionStudy } from './questionStudy.ts';
import { toCutStudy } from './toCutStudy.ts';

const study = (over: Partial<CutStudy>): CutStudy => ({ ...toCutStudy(aStudy()), ...over });
const cell = (powerPct: number, speedMmPerS: number, grade: StudyCell['grade']): StudyCell => ({
  powerPct,
  speedMmPerS,
  passes: 1,
  ...(grade === undefined ? {} : { grade }),
});

describe('questioning a study', () => {
  it('leaves an ordinary card alone, all of it', () => {
    // A 3 mm card of a workshop, 10–30 mm/s × 20–40 %: common practice, no source.
    const cells = [10, 15, 20, 25, 30].flatMap((speed) =>
      [20, 25, 30, 35, 40].map((power) => cell(power, speed, speed <= 10 ? 'out' : 'stays')),
    );
    expect(questionStudy(study({ cells }))).toEqual([]);
  });

  it('finds the one cell, the tally and the habit that were mistyped', () => {
    const found = questionStudy(
      study({
        cells: [
          cell(30, 14, 'out'),
          cell(30, 900, 'stays'),
          cell(30, 140, 'out'),
          cell(30, 140, 'stays'),
        ],
        tallies: [
          {
            setting: { powerPct: 30, speedMmPerS: 840, passes: 1 },
            out: 200,
            hangs: 0,
            stays: 0,
            spoilt: 0,
            partLengthMm: 60,
          },
        ],
        habit: { powerPct: 30, speedMmPerS: 0.24, comesOut: 'always' },
      }),
    );
    expect(found.map(({ at, index, problem }) => [at, index, problem.code])).toEqual([
      ['cell', 1, 'speed-looks-too-fast'],
      ['cell', 2, 'speed-looks-too-fast'],
      ['tally', 0, 'speed-looks-too-fast'],
      ['habit', 0, 'speed-looks-too-slow'],
    ]);
  });

  it('lets a card for thicker sheet come out everywhere', () => {
    expect(questionStudy(study({ cells: [cell(40, 4, 'out'), cell(30, 2.5, 'out')] }))).toEqual([]);
  });
});
