import { describe, expect, it } from 'vitest';
import type { Recommendation } from '../cutmodel/fitAnswer.ts';
import { speedsBeside } from './speedsBeside.ts';

const recommended: Recommendation = {
  ...{ powerPct: 30, speedMmPerS: 13.1, passes: 1, outOf100: 97, surePct: 95 },
  ...{ outOf100Mean: 98.6, sureAtSpeedPct: 95.3, guess: false },
};
const surer = { powerPct: 30, speedMmPerS: 12, outOf100Mean: 99.4, sureOfPromisePct: 98.8 };
const at = (speedMmPerS: number) => ({ powerPct: 30, speedMmPerS, passes: 1 });

describe('the speeds beside one another', () => {
  it('are the fastest that holds and one step surer, where the standing names one of them', () => {
    for (const speed of [13.1, 12])
      expect(
        speedsBeside({ recommended, oneStepSurer: surer }, { run: at(speed) }).map(
          ({ kind, setting, surePct }) => [kind, setting.speedMmPerS, surePct],
        ),
      ).toEqual([
        ['holds', 13.1, 95.3],
        ['surer', 12, 98.8],
      ]);
  });

  it('have the one that is to be run among them, wherever it lies', () => {
    const beside = speedsBeside({ recommended, oneStepSurer: surer }, { run: at(11) });
    expect(beside.map(({ kind }) => kind)).toEqual(['holds', 'surer', 'run']);
    expect(speedsBeside({ recommended: null }, { run: at(11) })).toEqual([
      { kind: 'run', setting: at(11) },
    ]);
    expect(speedsBeside({ recommended: null }, {})).toEqual([]);
  });

  it('have the one with the better edge among them, but not where the sheet failed', () => {
    const preferred = {
      ...{ powerPct: 30, speedMmPerS: 11.5, passes: 1, meanOf100: 80, atLeastOf100: 60 },
      ...{ secondsMore: 1, outOf100Mean: 99.6, sureOfPromisePct: 99.1 },
    };
    const edge = {
      ...({ best: 'clear', taped: false, edges: 9, wanted: 6 } as const),
      here: { meanOf100: 10, atLeastOf100: 2 },
      preferred,
    };
    const answer = { recommended, oneStepSurer: surer, edge };
    const kinds = (kind: 'holds' | 'failed', given: typeof answer = answer) =>
      speedsBeside(given, { run: at(13.1), kind }).map((offered) => offered.kind);
    expect(kinds('holds')).toEqual(['holds', 'surer', 'edge']);
    expect(kinds('failed')).toEqual(['holds', 'surer']);
    const same = { ...answer, edge: { ...edge, preferred: { ...preferred, speedMmPerS: 12 } } };
    expect(kinds('holds', same)).toEqual(['holds', 'edge']);
  });

  it('keep air and power in corners as they are run', () => {
    const run = { ...at(12), air: 'pump', minPowerPct: 20 } as const;
    for (const { setting } of speedsBeside({ recommended, oneStepSurer: surer }, { run }))
      expect(setting).toMatchObject({ air: 'pump', minPowerPct: 20 });
  });
});
