import { describe, expect, it } from 'vitest';

import { seededRandom } from '../../num/seededRandom.ts';
import { compareMeterings, type CurveChange } from './compareMeterings.ts';
import type { TubePoint } from '../machine/machine.ts';
import type { Metering } from './metering.ts';
import { whereToLook } from './whereToLook.ts';

const settings = [8, 10, 13, 15, 21, 27, 39, 51, 63];

/** An invented tube that fires at 9 % and reaches 19 mA at about 64 %. */
const usual = (powerPct: number): number => (powerPct < 9 ? 0 : 3 + 0.29 * (powerPct - 9));

const meteringOf = (
  draws: (powerPct: number) => number,
  seed: number,
  over: Partial<Metering> = {},
): Metering => {
  const random = seededRandom(seed);
  const readings = [0, 1].flatMap(() =>
    settings.map((powerPct): TubePoint => {
      const ma = draws(powerPct);
      const read = ma === 0 ? 0 : Number((ma + 0.12 * random.normal()).toFixed(1));
      return { powerPct, currentMa: read };
    }),
  );
  return { version: 1, id: 'm', at: '2031-05-06T07:08:09.000Z', readings, ...over };
};

const changeOf = (before: Metering, now: Metering): CurveChange => {
  const change = compareMeterings(before, now);
  if (!change.ok) throw new Error(change.problem.code);
  return change.value;
};
const codeOf = (before: Metering, now: Metering): string => {
  const change = compareMeterings(before, now);
  return change.ok ? change.value.how : change.problem.code;
};

describe('two meterings of one machine', () => {
  it('are called the same where nothing changed, nineteen times in twenty', () => {
    const pairs = Array.from({ length: 120 }, (_, i) =>
      codeOf(meteringOf(usual, 1000 + i), meteringOf(usual, 5000 + i)),
    );
    expect(pairs.filter((how) => how !== 'same').length).toBeLessThanOrEqual(11);
  });

  it('tell by how much the current went down or up, and hold the truth in the band', () => {
    const before = meteringOf(usual, 1);
    const lower = changeOf(
      before,
      meteringOf((pct) => 0.93 * usual(pct), 2),
    );
    expect(lower).toMatchObject({ how: 'lower', remarks: [] });
    expect(lower.lowPct).toBeLessThan(93);
    expect(lower.highPct).toBeGreaterThan(93);
    expect(lower.chanceOfLevel).toBeLessThan(0.01);
    expect(lower.most.nowMa).toBeLessThan(lower.most.beforeMa);
    expect(
      changeOf(
        before,
        meteringOf((pct) => 1.08 * usual(pct), 3),
      ).how,
    ).toBe('higher');
  });

  it('can be compared at settings with tenths, up to the last that both were read at', () => {
    // All of the way from 22.7 or 6.6 to 56.1 came to 56.10000000000001, where nothing was read.
    const [one, other] = [
      [
        [64.6, 865.1],
        [37, 121.4],
        [22.7, 940.9],
      ],
      [
        [56.1, 913.2],
        [6.6, 945],
        [38, 827.4],
      ],
    ].map((all) =>
      meteringOf(usual, 1, {
        readings: all.map(([powerPct = 0, currentMa = 0]) => ({ powerPct, currentMa })),
      }),
    );
    if (one === undefined || other === undefined) throw new Error('none');
    expect(() => compareMeterings(one, other)).not.toThrow();
    expect(() => compareMeterings(other, one)).not.toThrow();
  });

  it('leave a change alone that is real and too small to matter', () => {
    const fine = (factor: number) => ({
      ...meteringOf(usual, 1),
      readings: [0, 0.01].flatMap((off) =>
        settings.map((powerPct) => ({
          powerPct,
          currentMa: usual(powerPct) === 0 ? 0 : factor * usual(powerPct) + off,
        })),
      ),
    });
    const change = changeOf(fine(1), fine(0.985));
    expect(change.how).toBe('same');
    expect(change.highPct).toBeLessThan(100);
  });

  it('tell a bend and a threshold that moved', () => {
    const before = meteringOf(usual, 1);
    expect(
      codeOf(
        before,
        meteringOf((pct) => Math.min(14, usual(pct)), 2),
      ),
    ).toBe('bent');
    const late = (pct: number): number => (pct < 14 ? 0 : usual(pct));
    expect(codeOf(before, meteringOf(late, 2))).toBe('fires-later');
    expect(codeOf(meteringOf(late, 2), before)).toBe('fires-sooner');
  });

  it('turned round, turn the answer round', () => {
    const [before, now] = [meteringOf(usual, 1), meteringOf((pct) => 0.9 * usual(pct), 2)];
    const [there, back] = [changeOf(before, now), changeOf(now, before)];
    expect([there.how, back.how]).toEqual(['lower', 'higher']);
    expect((there.levelPct / 100) * (back.levelPct / 100)).toBeCloseTo(1, 9);
  });

  it('are not compared where they cannot be', () => {
    const before = meteringOf(usual, 1, { machine: 'left' });
    expect(codeOf(before, meteringOf(usual, 2, { machine: 'right' }))).toBe(
      'meterings-of-other-machines',
    );
    const low = { ...before, readings: before.readings.filter(({ powerPct }) => powerPct <= 15) };
    const high = { ...before, readings: before.readings.filter(({ powerPct }) => powerPct >= 21) };
    expect(codeOf(low, high)).toBe('meterings-without-overlap');
    expect(codeOf({ ...before, readings: [] }, before)).toBe('tube-readings-too-few');
    const rough = (seed: number): Metering => {
      const random = seededRandom(seed);
      const readings = before.readings.map(({ powerPct, currentMa }) => ({
        powerPct,
        currentMa: currentMa === 0 ? 0 : Math.max(0.5, currentMa + 2.5 * random.normal()),
      }));
      return { ...before, readings };
    };
    expect(codeOf(rough(3), rough(4))).toBe('meterings-too-noisy');
  });

  it('mind the water and the rating', () => {
    const before = meteringOf(usual, 1, { waterC: 18, ratedCurrentMa: 19 });
    const now = meteringOf(usual, 2, { waterC: 25, ratedCurrentMa: 22 });
    expect(changeOf(before, now).remarks.map(({ code }) => code)).toEqual([
      'meterings-water-differs',
      'meterings-rated-otherwise',
    ]);
  });
});

describe('where to look', () => {
  it('is at supply, wiring or controller where the curve moved (common practice, no source)', () => {
    for (const how of ['lower', 'higher', 'bent'] as const) {
      const { at, suspects } = whereToLook({ how }, 'weaker');
      expect(at).toBe('current');
      expect([...suspects].sort()).toEqual(['controller', 'supply', 'wiring']);
    }
  });

  it('is at optics, focus, water, air or the tube where the same current cuts less (common practice, no source)', () => {
    const { at, suspects } = whereToLook({ how: 'same' }, 'weaker');
    expect(at).toBe('light');
    expect([...suspects].sort()).toEqual(['air', 'focus', 'lens', 'mirrors', 'tube', 'water']);
    expect(suspects.at(-1)).toBe('tube');
  });

  it('is nowhere without cause, and at the meter first where only it speaks', () => {
    expect(whereToLook({ how: 'same' }, 'as-before')).toEqual({ at: 'nothing', suspects: [] });
    expect(whereToLook({ how: 'same' }, 'unsaid').at).toBe('cuts-first');
    expect(whereToLook({ how: 'lower' }, 'as-before')).toMatchObject({ at: 'read-again' });
    expect(whereToLook({ how: 'lower' }, 'as-before').suspects[0]).toBe('meter');
    expect(whereToLook({ how: 'fires-later' }, 'unsaid').suspects).toContain('tube');
  });
});
