import { describe, expect, it } from 'vitest';
import { sampleOrder, sampleTally } from '../../../test/samples/studies.ts';
import { omit } from '../omit.ts';
import { defaultPromise } from '../reading/promise.ts';
import { orderSoFar, type CountedSheet } from '../study/orderSoFar.ts';
import type { RecordedTally } from '../study/study.ts';
import { sheetVerdict } from './sheetVerdict.ts';

const order = sampleOrder('o1', { parts: 900 });
const promise = { ...defaultPromise, partLengthMm: 180 };
const foretold = { outOf100: 98.6, promisedOutOf100: 97, surePct: 95 };

const sheetsOf = (counts: readonly Partial<RecordedTally>[]): readonly CountedSheet[] =>
  orderSoFar(
    order,
    counts.map(({ hangs = 0, stays = 0, spoilt = 0, ...over }, i) => ({
      ...sampleTally(`t${String(i)}`),
      ...{ orderId: 'o1', sheet: String(i), partLengthMm: 180, foretold },
      ...{ out: 30 - hangs - stays - spoilt, hangs, stays, spoilt },
      ...over,
    })),
  ).sheets;

const verdictOf = (...counts: readonly Partial<RecordedTally>[]) =>
  sheetVerdict(promise, sheetsOf(counts));

describe('what the last sheet says', () => {
  it('is nothing where it came as foretold', () => {
    expect(verdictOf({}, { hangs: 1 })?.kind).toBe('fine');
    expect(verdictOf({})?.looks).toEqual([]);
  });

  it('is luck where a few more failed than foretold, and says how often that happens', () => {
    const verdict = verdictOf({}, {}, { hangs: 2 });
    expect(verdict?.kind).toBe('luck');
    // 2 or more of 30 at 1.4 % each: 6.7 % by the binomial; sheets that differ make it a little likelier.
    expect(verdict?.chancePct).toBeGreaterThan(5);
    expect(verdict?.chancePct).toBeLessThan(16);
    expect(verdict?.lookFirst).toBe(false);
  });

  it('is a bad sheet where far more failed and the sheets before were fine, with the lens and the board first', () => {
    const verdict = verdictOf({}, {}, {}, { stays: 14 });
    expect(verdict?.kind).toBe('bad-sheet');
    expect(verdict?.looks.slice(0, 2)).toEqual(['lens', 'thickness']);
    expect(verdict?.lookFirst).toBe(true);
  });

  it('is a drifting machine where it was going down before', () => {
    const verdict = verdictOf({}, { hangs: 2 }, { hangs: 4 }, { hangs: 6 });
    expect(verdict?.kind).toBe('drifting');
    expect(verdict?.looks[0]).toBe('lens');
    expect(verdict?.looks).not.toContain('moisture');
  });

  it('is the board where far more parts were spoilt than before, and not where spoilt parts are common', () => {
    expect(verdictOf({}, {}, { spoilt: 7 })?.kind).toBe('flawed-board');
    expect(verdictOf({ spoilt: 5 }, { spoilt: 6 }, { spoilt: 7 })?.kind).toBe('fine');
  });

  it('never gets better with one part more that failed', () => {
    const kinds = ['fine', 'luck', 'bad-sheet'];
    let worst = 0;
    for (let hangs = 0; hangs <= 30; hangs += 1) {
      const at = kinds.indexOf(verdictOf({}, {}, { hangs })?.kind ?? '');
      expect(at).toBeGreaterThanOrEqual(worst);
      worst = at;
    }
    expect(worst).toBe(2);
  });

  it('is not given of a sheet of which nothing was foretold', () => {
    const [, bare] = sheetsOf([{}, {}]);
    if (bare === undefined) throw new Error('no sheet');
    const tally = omit(bare.tallies[0], 'foretold');
    expect(sheetVerdict(promise, [{ ...bare, tallies: [tally] }])).toBeUndefined();
    expect(sheetVerdict(promise, [])).toBeUndefined();
  });
});
