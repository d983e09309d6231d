import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { demoRequest, requestWithoutTrusted } from '../../../test/fixtures/cardRequest.ts';
import { distanceMm } from '../path/point.ts';
import type { Card } from './card.ts';
import type { CardRequest } from './cardRequest.ts';
import { energyCeiling, energyRatio } from './ceiling.ts';
import { correlation } from './correlation.ts';
import { designCard, type DesignedCard } from './designCard.ts';
import { testShapeNames } from './testShapes.ts';

const designed = (change: Partial<CardRequest> = {}): DesignedCard => {
  const outcome = designCard({ ...demoRequest, ...change });
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value;
};
const problemOf = (change: Partial<CardRequest>): string => {
  const outcome = designCard({ ...demoRequest, ...change });
  return outcome.ok ? 'none' : outcome.problem.code;
};
const settingOf = (card: Card, rung: string) => {
  const found = card.rungs.find(({ letter }) => letter === rung);
  if (found === undefined) throw new Error(`no rung ${rung}`);
  return found.setting;
};
const lnSpeeds = (card: Card): readonly number[] =>
  card.cells.map((cell) => Math.log(settingOf(card, cell.rung).speedMmPerS));

const seeds = fc.integer({ min: 0, max: 2 ** 31 });

describe('the default ladder', () => {
  it('holds one power and varies six speeds, two cells each, around the believed changeover', () => {
    const { card } = designed();
    expect(card.rungs.map((rung) => rung.letter).join('')).toBe('ABCDEF');
    expect(new Set(card.rungs.map((rung) => rung.setting.powerPct))).toEqual(new Set([34]));
    expect(new Set(card.rungs.map((rung) => rung.setting.speedMmPerS)).size).toBe(6);
    expect(card.cells).toHaveLength(12);
    const speeds = card.rungs.map((rung) => rung.setting.speedMmPerS);
    expect(Math.min(...speeds)).toBeLessThan(17);
    expect(Math.max(...speeds)).toBeGreaterThan(17);
  });

  it('is the same card for the same request, and another for another seed', () => {
    expect(designed()).toEqual(designed());
    expect(designed({ seed: 2 }).card.cells).not.toEqual(designed().card.cells);
  });

  it('has speeds on the steps that people type: 0.5 mm/s, 0.1 below 5', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.8, max: 60, noNaN: true }), seeds, (v50MmPerS, seed) => {
        const trusted = { powerPct: 34, speedMmPerS: v50MmPerS / 2, passes: 1 };
        const scoring = { powerPct: 14, speedMmPerS: 4 * v50MmPerS, passes: 1 };
        const machine = { ...demoRequest.machine, speedRangeMmPerS: [0.1, 500] as const };
        const believed = () => ({ v50MmPerS, lnSd: 0.3 });
        const { card } = designed({ seed, trusted, scoring, machine, believed });
        for (const { setting } of card.rungs) {
          const step = setting.speedMmPerS < 5 ? 0.1 : 0.5;
          const steps = setting.speedMmPerS / step;
          expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('reads wider where less is known', () => {
    const spread = (lnSd: number): number => {
      const speeds = designed({ believed: () => ({ v50MmPerS: 17, lnSd }) }).card.rungs.map(
        (rung) => rung.setting.speedMmPerS,
      );
      return Math.max(...speeds) / Math.min(...speeds);
    };
    expect(spread(0.6)).toBeGreaterThan(1.4 * spread(0.1));
  });
});

describe('the order of cutting', () => {
  it('never rises steadily in speed, and hardly goes with it', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const speeds = designed({ seed }).card.rungs.map((rung) => rung.setting.speedMmPerS);
        expect(speeds).not.toEqual([...speeds].sort((a, b) => a - b));
        const order = speeds.map((_, i) => i);
        expect(Math.abs(correlation(speeds.map(Math.log), order))).toBeLessThanOrEqual(0.3);
      }),
      { numRuns: 40 },
    );
  });

  it('keeps a rung together, in letter order, since drawings cannot do otherwise', () => {
    const { card } = designed();
    expect(card.cells.map((cell) => cell.rung)).toEqual(Array.from('AABBCCDDEEFF'));
  });

  it('mixes the rungs where only G-code takes it to the machine, and says that only G-code can', () => {
    const { card, remarks } = designed({ order: 'free' });
    expect(card.order).toBe('free');
    expect(card.cells.map((cell) => cell.rung)).not.toEqual(Array.from('AABBCCDDEEFF'));
    expect(card.cells.map((cell) => cell.rung).sort()).toEqual(Array.from('AABBCCDDEEFF'));
    expect(remarks.map(({ code }) => code)).toContain('card-order-only-in-gcode');
  });
});

describe('the places of the cells', () => {
  it('bear no trend: speed goes neither with x nor with y', () => {
    fc.assert(
      fc.property(seeds, fc.constantFrom(...testShapeNames), (seed, shape) => {
        const { card } = designed({ seed, shape });
        const xs = card.cells.map((cell) => cell.xMm);
        const ys = card.cells.map((cell) => cell.yMm);
        expect(Math.abs(correlation(lnSpeeds(card), xs))).toBeLessThan(0.2);
        expect(Math.abs(correlation(lnSpeeds(card), ys))).toBeLessThan(0.2);
      }),
      { numRuns: 40 },
    );
  });

  it('are not those of a card that stands as it was typed (the check above can fail)', () => {
    const { card } = designed();
    const xs = card.cells.map((cell) => cell.xMm).sort((a, b) => a - b);
    const sorted = [...lnSpeeds(card)].sort((a, b) => a - b);
    expect(correlation(sorted, xs)).toBeGreaterThan(0.9);
  });

  it('keep cells that are cut one after the other from being neighbours', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { card } = designed({ seed });
        const nearest = Math.min(
          ...card.cells.slice(1).map((cell) => distanceMm(at(card, 0), [cell.xMm, cell.yMm])),
        );
        card.cells.slice(1).forEach((_, i) => {
          expect(distanceMm(at(card, i), at(card, i + 1))).toBeGreaterThan(1.01 * nearest);
        });
      }),
      { numRuns: 40 },
    );
  });

  it('stand at least a sheet thickness apart', () => {
    for (const thicknessMm of [1, 3, 6, 12, 20]) {
      const { card } = designed({ thicknessMm, sheetMm: [400, 300], shape: 'comb' });
      card.cells.forEach((a, i) => {
        for (const b of card.cells.slice(i + 1)) {
          const gap = Math.max(Math.abs(a.xMm - b.xMm) - 14, Math.abs(a.yMm - b.yMm) - 0.9 * 14);
          expect(gap).toBeGreaterThanOrEqual(thicknessMm - 1e-6);
        }
      });
    }
  });
});

const at = (card: Card, i: number): readonly [number, number] => {
  const cell = card.cells[i];
  if (cell === undefined) throw new Error('no such cell');
  return [cell.xMm, cell.yMm];
};

describe('the ceiling', () => {
  it('lets no cell have more than three times the line energy of the believed changeover', () => {
    const believedV50 = fc.double({ min: 0.8, max: 80, noNaN: true });
    const lnSd = fc.double({ min: 0.01, max: 2, noNaN: true });
    const vary = fc.constantFrom('speed', 'power', 'speed-and-power', 'passes');
    fc.assert(
      fc.property(believedV50, lnSd, vary, (v50, sd, what) => {
        const believed = (powerPct: number) => ({ v50MmPerS: (v50 * powerPct) / 34, lnSd: sd });
        const outcome = designCard({ ...demoRequest, vary: what, believed, sheetMm: [500, 500] });
        if (!outcome.ok) return;
        for (const { setting } of outcome.value.card.rungs) {
          expect(energyRatio(setting, believed)).toBeLessThanOrEqual(energyCeiling + 1e-9);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('speeds up a rung said outright that is too slow, and says so', () => {
    const { card, remarks } = designed({
      rungs: [
        { powerPct: 34, speedMmPerS: 2, passes: 1 },
        { powerPct: 34, speedMmPerS: 17, passes: 1 },
      ],
    });
    expect(card.rungs.map((rung) => rung.setting.speedMmPerS).sort((a, b) => a - b)).toEqual([
      6, 17,
    ]);
    expect(remarks[0]).toEqual({
      code: 'card-rung-sped-up-to-ceiling',
      params: { saidMmPerS: 2, powerPct: 34, speedMmPerS: 6, times: 8.5 },
    });
  });
});

describe('what the user wishes', () => {
  it('is never exceeded: settings to type, entries of the control program', () => {
    for (const most of [1, 2, 3, 5, 8]) {
      expect(designed({ settingsAtMost: most }).card.rungs).toHaveLength(most);
      expect(designed({ entriesAtMost: most + 2 }).card.rungs.length).toBe(Math.min(6, most));
      const twoWay = designed({ settingsAtMost: most, vary: 'speed-and-power' }).card.rungs;
      expect(twoWay.length).toBeLessThanOrEqual(most);
    }
    const outcome = designCard({ ...requestWithoutTrusted, entriesAtMost: 4 });
    expect(outcome.ok && outcome.value.card.rungs.length).toBe(3);
  });

  it('is refused with a code where no card can be made of it', () => {
    expect(problemOf({ vary: 'corners', shape: 'circle' })).toBe('card-corners-need-corners');
    const slow = { ...demoRequest.machine, powerRampStartMmPerS: 40 };
    expect(problemOf({ vary: 'corners', machine: slow })).toBe('card-corners-below-start');
    expect(problemOf({ sheetMm: [60, 40] })).toBe('card-bigger-than-sheet');
    expect(problemOf({ sizeMm: Number.NaN })).toBe('card-request-out-of-range');
    expect(problemOf({ cellsEach: 24, settingsAtMost: 50 })).toBe('card-request-out-of-range');
    expect(problemOf({ entriesAtMost: 2 })).toBe('card-too-many-entries');
    expect(problemOf({ powerPct: 90 })).toBe('card-power-above-machine');
    const bed = { widthMm: 600, heightMm: 400, gapMm: 15 };
    expect(problemOf({ machine: { ...demoRequest.machine, bed } })).toBe('card-cell-below-bed-gap');
  });

  it('stays on the sheet', () => {
    const sides = fc.tuple(fc.integer({ min: 50, max: 300 }), fc.integer({ min: 50, max: 300 }));
    fc.assert(
      fc.property(sides, (sheetMm) => {
        const outcome = designCard({ ...demoRequest, sheetMm });
        if (!outcome.ok) return;
        expect(outcome.value.card.widthMm).toBeLessThanOrEqual(sheetMm[0]);
        expect(outcome.value.card.heightMm).toBeLessThanOrEqual(sheetMm[1]);
      }),
      { numRuns: 40 },
    );
  });
});

describe('the other questions', () => {
  it('my power: one speed, powers around the one asked, none above the machine nor the tube', () => {
    const tubePoints = [
      { powerPct: 10, currentMa: 5 },
      { powerPct: 40, currentMa: 20 },
    ];
    const machine = { ...demoRequest.machine, ratedCurrentMa: 20, tubePoints };
    const { card } = designed({ vary: 'power', machine });
    expect(new Set(card.rungs.map((rung) => rung.setting.speedMmPerS)).size).toBe(1);
    expect(Math.max(...card.rungs.map((rung) => rung.setting.powerPct))).toBeLessThanOrEqual(40);
  });

  it('both: at least two powers with at least two speeds each', () => {
    const { card } = designed({ vary: 'speed-and-power', cellsEach: 1 });
    const powers = new Set(card.rungs.map((rung) => rung.setting.powerPct));
    expect(powers.size).toBe(3);
    for (const power of powers) {
      const speeds = card.rungs.filter((rung) => rung.setting.powerPct === power);
      expect(speeds.length).toBe(3);
    }
  });

  it('whether two passes pay: as many rungs in two passes, faster', () => {
    const { card } = designed({ vary: 'passes', sheetMm: [200, 200] });
    const speeds = (passes: number): readonly number[] =>
      card.rungs.filter((r) => r.setting.passes === passes).map((r) => r.setting.speedMmPerS);
    expect(speeds(1)).toHaveLength(3);
    expect(speeds(2)).toHaveLength(3);
    expect(Math.min(...speeds(2))).toBeGreaterThan(Math.min(...speeds(1)));
  });

  it('without a trusted setting there is neither outline nor window, and it is said', () => {
    const outcome = designCard(requestWithoutTrusted);
    if (!outcome.ok) throw new Error(outcome.problem.code);
    const { card, remarks } = outcome.value;
    expect(card.outline).toBe('none');
    expect(card.places.window).toBeUndefined();
    expect(remarks.map(({ code }) => code)).toContain('card-no-trusted-setting');
  });
});
