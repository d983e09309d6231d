import { describe, expect, it } from 'vitest';
import { defaultPromise } from '../reading/promise.ts';
import { alsoBy } from './alsoBy.ts';
import { standingOf } from './standingOf.ts';

const setting = { powerPct: 30, speedMmPerS: 12, passes: 1 };
const kept = { setting, promise: defaultPromise, outOf100Mean: 98.5, surePct: 96 };
const evidence = { kept, promise: defaultPromise, orders: [], strips: [], isChartAlarmed: false };
const answer = (holdsAtKeptMmPerS: number | null) => ({
  recommended: setting,
  isGuess: false,
  holdsAtKeptMmPerS,
});

describe('a standing with a newer answer', () => {
  it('is the same as weighed anew, where the answer says less', () => {
    for (const holds of [11.7, 9.9, null])
      expect(alsoBy(standingOf(evidence), kept, answer(holds))).toEqual(
        standingOf({ ...evidence, answer: answer(holds) }),
      );
  });

  it('stays as it is where the answer says more', () => {
    const standing = standingOf(evidence);
    expect(alsoBy(standing, kept, answer(14))).toEqual(standing);
  });
});
