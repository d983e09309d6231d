import { describe, expect, it } from 'vitest';
import { demoRequest } from '../../../test/fixtures/cardRequest.ts';
import type { CardRequest } from '../../core/card/cardRequest.ts';
import { checkCounts, checkRequest } from '../../core/card/checkRequest.ts';
import { problemInWords } from '../words.ts';

const rung = { powerPct: 30, speedMmPerS: 12, passes: 1 };
const changes: readonly Partial<CardRequest>[] = [
  { powerPct: 0 },
  { sizeMm: 1 },
  { sheetMm: [1, 300] },
  { sheetMm: [300, 1] },
  { thicknessMm: 180 },
  { cellsEach: 0 },
  { settingsAtMost: 0 },
  { entriesAtMost: 0 },
  { speedMmPerS: 0 },
  { rungs: [{ ...rung, powerPct: 0 }] },
  { rungs: [{ ...rung, minPowerPct: -1 }] },
  { rungs: [{ ...rung, speedMmPerS: 0 }] },
  { rungs: [{ ...rung, passes: 0 }] },
];

describe('a figure that no card can be made with', () => {
  const problems = [
    ...changes.map((change) => checkRequest({ ...demoRequest, ...change })),
    checkCounts(99, 99),
    checkCounts(1, 999),
  ];

  it('is said in words, not by its name in the code, and with how far it may go', () => {
    for (const problem of problems) {
      if (problem === undefined) throw new Error('a request that should be refused was not');
      const { message, remedy } = problemInWords(problem);
      expect(problem.code).toBe('card-request-out-of-range');
      expect(message).not.toMatch(/=|[a-z][A-Z]|rungs/);
      expect(remedy).toMatch(/^Choose from [\d.]+ to \d+;/);
    }
  });

  it('has its unit beside it', () => {
    const thick = checkRequest({ ...demoRequest, thicknessMm: 180 });
    expect(thick && problemInWords(thick).message).toBe(
      'The card asks for a sheet 180\u00a0mm thick.',
    );
  });
});
