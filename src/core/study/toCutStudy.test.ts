import { describe, expect, it } from 'vitest';
import { aCard, aStudy } from '../../../test/builders.ts';
import { cellOrigins, toCutStudy } from './toCutStudy.ts';

const at = '2025-03-01T10:00:00.000Z';
const study = aStudy({
  stock: { material: 'plywood', nominalThicknessMm: 3, thicknessReadingsMm: [3.1, 3.2, 3.3] },
  cards: [
    aCard({ code: 'AAAA', batch: 'spring', sheet: 'no. 4', thicknessMm: 3.15 }),
    aCard({ code: 'BBBB', shapeLengthMm: 80 }),
  ],
  events: [
    { id: '1', cardCode: 'BBBB', at, kind: 'spoilt', cell: 'A2', reason: 'clip' },
    { id: '2', cardCode: 'AAAA', at, kind: 'graded', cell: 'C1', grade: 'hangs' },
    {
      id: '3',
      cardCode: 'AAAA',
      at,
      kind: 'as-cut',
      cell: 'C1',
      setting: { powerPct: 28, speedMmPerS: 18, passes: 2 },
    },
  ],
  tallies: [
    {
      id: 't1',
      at,
      provenSettingId: 'p1',
      setting: { powerPct: 30, speedMmPerS: 14, passes: 1 },
      out: 197,
      hangs: 2,
      stays: 0,
      spoilt: 1,
      partLengthMm: 160,
      batch: 'spring',
    },
  ],
});

describe('what the cut model sees of a study', () => {
  it('takes read cells only, as cut, with their card’s sheet, batch, thickness and shape', () => {
    expect(toCutStudy(study).cells).toEqual([
      {
        powerPct: 28,
        speedMmPerS: 18,
        passes: 2,
        batch: 'spring',
        sheet: 'no. 4',
        thicknessMm: 3.15,
        shapeLengthMm: 62,
        grade: 'hangs',
      },
      {
        powerPct: 30,
        speedMmPerS: 12,
        passes: 1,
        sheet: 'card BBBB',
        shapeLengthMm: 80,
        spoilt: 'clip',
      },
    ]);
    expect(cellOrigins(study)).toEqual([
      { cardCode: 'AAAA', cell: 'C1' },
      { cardCode: 'BBBB', cell: 'A2' },
    ]);
  });

  it('reckons with the mean of the caliper, else with the label', () => {
    expect(toCutStudy(study).stock.thicknessMm).toBeCloseTo(3.2, 12);
    expect(toCutStudy(aStudy()).stock.thicknessMm).toBe(3);
  });

  it('keeps of a tally what the model needs, and an absent habit absent', () => {
    const seen = toCutStudy(study);
    expect(seen.tallies).toEqual([
      {
        setting: { powerPct: 30, speedMmPerS: 14, passes: 1 },
        out: 197,
        hangs: 2,
        stays: 0,
        spoilt: 1,
        partLengthMm: 160,
        batch: 'spring',
      },
    ]);
    expect('habit' in seen).toBe(false);
  });
});
