import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import { fitStudy } from '../cutmodel/fitStudy.ts';
import { reachOf } from '../cutmodel/reach.ts';
import { waysToCut } from './waysToCut.ts';

const cells = [25, 30, 35, 40].flatMap((powerPct) =>
  [0.5, 0.7, 0.85, 1.15, 1.4].map((part) => ({
    powerPct,
    speedMmPerS: Math.round(0.55 * powerPct * part * 2) / 2,
    grade: part < 1 ? ('out' as const) : ('stays' as const),
    sheet: '1',
  })),
);

describe('ways to cut', () => {
  const study = plainStudy({
    cells,
    ask: { powerPct: 34 },
    machine: { maxPowerPct: 42, speedRangeMmPerS: [1, 100] },
  });
  const answer = fitStudy(study);
  const ways = waysToCut(answer, study.machine, 120, reachOf(study));

  it('go from gentle and slow to hard and fast, with what is recommended between', () => {
    expect(ways.map(({ kind }) => kind)).toEqual(['gentle', 'chosen', 'hard']);
    const [gentle, chosen, hard] = ways;
    expect(gentle?.powerPct ?? 99).toBeLessThan(chosen?.powerPct ?? 0);
    expect(hard?.powerPct ?? 0).toBeGreaterThan(chosen?.powerPct ?? 99);
    expect(hard?.seconds ?? 99).toBeLessThan(gentle?.seconds ?? 0);
  });

  it('name no power beyond those that were cut, and say guess of what was not', () => {
    const far = { ...study, machine: { ...study.machine, maxPowerPct: 80 } };
    const found = waysToCut(fitStudy(far), far.machine, 120, reachOf(far));
    for (const { powerPct } of found) expect(powerPct).toBeLessThanOrEqual(40.5);
    const beyond = fitStudy({ ...far, ask: { powerPct: 68 } });
    const said = waysToCut(beyond, far.machine, 120, reachOf(far));
    expect(said.filter(({ powerPct }) => powerPct > 40.5).map(({ isGuess }) => isGuess)).toEqual([
      true,
    ]);
  });

  it('take the time of the cut alone', () => {
    for (const way of ways) expect(way.seconds).toBeCloseTo(120 / way.speedMmPerS, 12);
  });

  it('are none where nothing is recommended', () => {
    expect(waysToCut(fitStudy(plainStudy()), study.machine, 120, reachOf(study))).toEqual([]);
  });
});
