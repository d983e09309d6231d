import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import { sampleEntry } from '../../../test/samples/studies.ts';
import type { StudyCell } from '../cutmodel/cutStudy.ts';
import { fitStudy } from '../cutmodel/fitStudy.ts';
import { answerSeen } from './evidenceFrom.ts';

const powerPct = 40;
const cut = (speedMmPerS: number, count: number, how: Partial<StudyCell>): StudyCell => ({
  ...{ powerPct, speedMmPerS, passes: 1, count, sheet: 'card' },
  ...how,
});

const answerOf = (cells: readonly StudyCell[]) =>
  fitStudy(
    plainStudy({
      stock: { material: 'cast acrylic', thicknessMm: 3 },
      promise: { outOf100: 90, surePct: 80, partLengthMm: 60, for: 'batch' },
      ask: { powerPct },
      cells,
    }),
  );

const clean = [8, 10, 12].map((speed) => cut(speed, 8, { grade: 'out' }));
const tooFast = [18, 22].map((speed) => cut(speed, 8, { grade: 'stays' }));
const weldedAt = (...speeds: readonly number[]) =>
  speeds.map((speed) => cut(speed, 8, { spoilt: 'welded-back' }));

describe('what of an answer bears on the standing', () => {
  it('is from where on what was cut stays open, as the answer itself says', () => {
    const answer = answerOf([...weldedAt(4, 5), ...clean, ...tooFast]);
    const { staysOpenFromMmPerS = NaN } = answerSeen(answer, undefined, undefined);
    expect(staysOpenFromMmPerS).toBeGreaterThan(5);
    expect(staysOpenFromMmPerS).toBeLessThanOrEqual(answer.recommended?.speedMmPerS ?? NaN);
  });

  it('is the best speed that is known where what is slow enough to cut through welds', () => {
    const few = [cut(11, 4, { grade: 'out' }), cut(12, 4, { grade: 'stays' })];
    const answer = answerOf([...weldedAt(8, 10), ...few, ...tooFast]);
    const { recommended, staysOpenFromMmPerS } = answerSeen(answer, undefined, undefined);
    expect(recommended).toBeNull();
    expect(answer.reason).toMatchObject({
      code: 'welds-before-it-cuts',
      params: { speedMmPerS: staysOpenFromMmPerS },
    });
  });

  it('says nothing of a setting that was kept at another power, or in more passes', () => {
    const answer = answerOf([...weldedAt(4, 5), ...clean, ...tooFast]);
    const keptAt = (setting: { powerPct: number; passes: number }) =>
      answerSeen(answer, sampleEntry('b1', { setting: { ...setting, speedMmPerS: 9 } }), undefined)
        .staysOpenFromMmPerS;
    expect(keptAt({ powerPct, passes: 1 })).toBeGreaterThan(5);
    expect(keptAt({ powerPct: 30, passes: 1 })).toBeUndefined();
    expect(keptAt({ powerPct, passes: 2 })).toBeUndefined();
  });

  it('is nothing of that kind where nothing was seen to weld', () => {
    const seen = answerSeen(answerOf([...clean, ...tooFast]), undefined, undefined);
    expect(seen.staysOpenFromMmPerS).toBeUndefined();
  });
});
