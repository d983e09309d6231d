import { describe, expect, it } from 'vitest';
import { readCardOf } from '../../../test/samples/earlier.ts';
import { plainStudy } from '../../../test/plainStudy.ts';
import { aStudy } from '../../../test/builders.ts';
import { toCutStudy } from '../study/toCutStudy.ts';
import { firstBeliefs } from './beliefs.ts';
import { beliefsAfter } from './beliefsAfter.ts';
import type { StudyCell } from './cutStudy.ts';
import { meanSdOfScale } from './priorScales.ts';

/** A batch of three sheets of twelve cells, scatter 8 % and sheets 1.5 % apart; each batch cuts at a level of its own. */
const batchOf = (n: number, apart = 0): readonly (readonly StudyCell[])[] =>
  [1, 2, 3].map((k) => {
    const level = (1 + 0.03 * (n % 4)) * (1 + apart * (k - 2));
    const { card, events } = readCardOf('CARD', 100 * n + k, { level });
    const { cells } = toCutStudy(aStudy({ cards: [card], events }));
    return cells.map((cell) => ({ ...cell, batch: String(n), sheet: String(k) }));
  });
const study = plainStudy({ ask: { powerPct: 30 } });
const batches = (count: number, apart = 0) =>
  Array.from({ length: count }, (_, n) => batchOf(n + 1, apart)).flat();

describe('what batches long past taught', () => {
  const after = beliefsAfter(study, batches(10));

  it('is nothing where there were none, or none was read', () => {
    expect(beliefsAfter(study, [])).toBe(firstBeliefs);
    const unread = batchOf(1).map((sheet) =>
      sheet.map(({ powerPct, speedMmPerS, passes, batch = '' }) => ({
        powerPct,
        speedMmPerS,
        passes,
        batch,
      })),
    );
    expect(beliefsAfter(study, unread)).toBe(firstBeliefs);
  });

  it('holds the true scatter within what ten batches can tell, and no closer than batches differ', () => {
    const { mean, sd } = after.lnSigma;
    expect(Math.abs(mean - Math.log(0.08))).toBeLessThan(2.5 * sd);
    expect(sd).toBeLessThan(0.22);
    expect(sd).toBeGreaterThan(0.1);
  });

  it('tells sheets that lie apart from those that lie close together', () => {
    const apart = beliefsAfter(study, batches(10, 0.08));
    expect(meanSdOfScale(apart.sheetSd).mean).toBeGreaterThan(
      1.6 * meanSdOfScale(after.sheetSd).mean,
    );
  });

  it('says that flaws are few, and never surer than flaws are alike from batch to batch', () => {
    expect(after.flawsPerMetre.mean).toBeLessThan(0.5 * firstBeliefs.flawsPerMetre.mean);
    expect(after.flawsPerMetre.sd).toBeGreaterThanOrEqual(0.5 * after.flawsPerMetre.mean);
  });

  it('grows surer with every batch', () => {
    const sds = [2, 5, 10].map((count) => beliefsAfter(study, batches(count)).lnSigma.sd);
    expect(sds).toEqual([...sds].sort((a, b) => b - a));
    expect(sds[0]).toBeLessThan(firstBeliefs.lnSigma.sd);
  });

  it('is nearly the same in whichever order they came', () => {
    const backwards = beliefsAfter(study, [...batches(10)].reverse());
    const apart = Math.abs(backwards.lnSigma.mean - after.lnSigma.mean);
    expect(apart).toBeLessThan(0.35 * after.lnSigma.sd);
    expect(backwards.lnSigma.sd / after.lnSigma.sd).toBeCloseTo(1, 1);
  });

  it('keeps every link possible, and their weights a whole', () => {
    const weights = Object.values(after.links);
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 9);
    expect(Math.min(...weights)).toBeGreaterThan(0.01);
  });
});
