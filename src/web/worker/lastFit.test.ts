import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import { answerWithEarlier, nextCardWithEarlier } from '../../core/study/answerWithEarlier.ts';
import { lastFit } from './lastFit.ts';
import { modelCalls } from './modelCalls.ts';

const studyAt = (mmPerS: number) =>
  plainStudy({
    cells: [0.7, 0.8, 0.9, 1, 1.1, 1.2].map((part, i) => ({
      powerPct: 30,
      speedMmPerS: part * mmPerS,
      grade: i < 3 ? ('out' as const) : ('stays' as const),
    })),
    ask: { powerPct: 30 },
  });
const sizes = [
  { cellsWanted: 8, settingsAtMost: 4 },
  { cellsWanted: 12, settingsAtMost: 6 },
];

describe('the last fit of the model’s thread', () => {
  it('serves the answer and both next cards, and is made anew for another study', () => {
    const asked = { study: studyAt(16), earlier: [] };
    const first = lastFit(asked);
    expect(lastFit(structuredClone(asked))).toBe(first);
    expect(lastFit({ study: studyAt(17), earlier: [] })).not.toBe(first);
  });

  it('says what a fit of its own says, in whatever order it is asked', () => {
    for (const study of [studyAt(16), studyAt(20), studyAt(16)]) {
      for (const wish of sizes) {
        expect(modelCalls.nextCard({ study, earlier: [], ...wish })).toEqual(
          nextCardWithEarlier(study, wish, []),
        );
      }
      expect(modelCalls.fit({ study, earlier: [], aim: 'fastest' })).toEqual(
        answerWithEarlier(study, 'fastest', []),
      );
    }
  });
});
