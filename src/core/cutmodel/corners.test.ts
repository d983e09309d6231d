import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import type { Grade } from '../reading/grade.ts';
import { compileStudy } from './compileStudy.ts';
import { fitStudy } from './fitStudy.ts';
import { priors } from './priors.ts';

const graded = (grade: Grade) => grade;

/** A ladder that settles the changeover at about 17 mm/s, equal power in corners. */
const ladder = [11, 12, 13, 14, 15, 16, 18, 19, 20, 21, 22, 23].map((speedMmPerS) => ({
  powerPct: 30,
  speedMmPerS,
  grade: graded(speedMmPerS < 17 ? 'out' : 'stays'),
  sheet: '1',
}));

/** A card at one speed and power that varies the power in corners: all at or above `enoughPct` come out. */
const cornersCard = (enoughPct: number) =>
  [30, 26, 22, 18, 14, 10].flatMap((minPowerPct) =>
    [0, 1, 2].map(() => ({
      powerPct: 30,
      minPowerPct,
      speedMmPerS: 13,
      grade: graded(minPowerPct >= enoughPct ? 'out' : 'hangs'),
      sheet: '2',
    })),
  );

const ask = { ask: { powerPct: 30 } };

describe('power in corners', () => {
  it('is no parameter where every cell had equal powers', () => {
    const answer = fitStudy(plainStudy({ cells: ladder, ...ask }));
    expect(answer.posterior.cornersExponent).toBeUndefined();
    expect(answer.corners).toBeUndefined();
  });

  it('costs more the sooner the corners hang', () => {
    const [tolerant, touchy] = [12, 24].map((enoughPct) =>
      fitStudy(plainStudy({ cells: [...ladder, ...cornersCard(enoughPct)], ...ask })),
    );
    expect(tolerant?.posterior.cornersExponent?.mean ?? 9).toBeLessThan(
      priors.cornersExponent.mean,
    );
    expect(touchy?.posterior.cornersExponent?.mean ?? 0).toBeGreaterThan(
      priors.cornersExponent.mean,
    );
    expect(tolerant?.corners?.leastMinPowerPct ?? 99).toBeLessThan(
      touchy?.corners?.leastMinPowerPct ?? 0,
    );
    for (const answer of [tolerant, touchy]) {
      expect(answer?.corners?.leastMinPowerPct).toBeLessThanOrEqual(30);
    }
  });

  it('is found where the law is the model’s own', () => {
    // m = ln 17 − 0.3·ln(30/min) − ln 13 is nil at min = 12.3 %.
    const answer = fitStudy(plainStudy({ cells: [...ladder, ...cornersCard(12.3)], ...ask }));
    const { mean = 0, sd = 1 } = answer.posterior.cornersExponent ?? {};
    expect(Math.abs(mean - 0.3)).toBeLessThan(sd);
    expect(sd).toBeLessThan(0.7 * priors.cornersExponent.sd);
  });

  it('is the power of the whole path at or below the start speed', () => {
    const machine = {
      maxPowerPct: 100,
      speedRangeMmPerS: [1, 100],
      powerRampStartMmPerS: 8,
    } as const;
    const cells = [
      { powerPct: 30, minPowerPct: 15, speedMmPerS: 6, grade: 'out' as const },
      { powerPct: 30, minPowerPct: 15, speedMmPerS: 12, grade: 'out' as const },
    ];
    const compiled = compileStudy(plainStudy({ cells, machine, ...ask }));
    expect(compiled.slowCells).toEqual([0]);
    const [slow, fast] = compiled.model.observations;
    expect(slow?.lnPower).toBeCloseTo(Math.log(15 / 30), 12);
    expect(slow?.lnCorners).toBe(0);
    expect(fast?.lnPower).toBeCloseTo(0, 12);
    expect(fast?.lnCorners).toBeCloseTo(Math.log(2), 12);
    const { warnings } = fitStudy(plainStudy({ cells, machine, ...ask }));
    expect(warnings.map(({ code }) => code)).toContain('cut-on-corner-power');
  });

  it('above the power at full speed is that power', () => {
    const cells = [{ powerPct: 30, minPowerPct: 40, speedMmPerS: 12, grade: 'out' as const }];
    const compiled = compileStudy(plainStudy({ cells, ...ask }));
    expect(compiled.model.observations[0]?.lnCorners).toBe(0);
  });
});
