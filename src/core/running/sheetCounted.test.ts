import { describe, expect, it } from 'vitest';
import { sampleOrder, sampleStudy, sampleTally } from '../../../test/samples/studies.ts';
import { orderSoFar } from '../study/orderSoFar.ts';
import { foretoldOf, talliesOfSheet } from './sheetCounted.ts';

const order = sampleOrder('o1');
const at = '2031-05-06T08:00:00.000Z';
const counted = [
  { powerPct: 34, speedMmPerS: 12, parts: 24, hangs: 1, stays: 0, spoilt: 1 },
  { powerPct: 34, speedMmPerS: 13, parts: 6, hangs: 0, stays: 2, spoilt: 0 },
];

describe('a counted sheet', () => {
  it('is a count for each setting, of one sheet, what was foretold with the main one', () => {
    const foretold = { outOf100: 98.6, promisedOutOf100: 97, surePct: 96 };
    const study = sampleStudy('s1', { tallies: [] });
    const tallies = talliesOfSheet(study, order, { counted, foretold, at, ids: ['a', 'b'] });
    expect(tallies).toMatchObject([
      { id: 'a', orderId: 'o1', out: 22, hangs: 1, spoilt: 1, partLengthMm: 180, foretold },
      { id: 'b', orderId: 'o1', out: 4, stays: 2, setting: { speedMmPerS: 13 } },
    ]);
    expect(tallies[1]?.foretold).toBeUndefined();
    expect(orderSoFar(order, tallies).sheets).toHaveLength(1);
  });

  it('is of the batch and the air that was cut with last', () => {
    const before = sampleTally('before', { batch: 'March' });
    const study = sampleStudy('s1', { tallies: [before] });
    const [tally] = talliesOfSheet(study, order, { counted, at, ids: ['a', 'b'] });
    expect(tally).toMatchObject({ batch: 'March' });
    expect(tally?.setting.air).toEqual(before.setting.air);
  });

  it('leaves out what was not cut, and bounds that are not known', () => {
    const none = [{ ...counted[0], parts: 0 }, counted[1]].flatMap((one) => one ?? []);
    const study = sampleStudy('s1', { tallies: [] });
    const tallies = talliesOfSheet(study, order, {
      counted: none.map((one) => ({
        ...{ powerPct: 34, speedMmPerS: 12, hangs: 0, stays: 0, spoilt: 0 },
        ...one,
      })),
      at,
      ids: ['a', 'b'],
    });
    expect(tallies.map(({ id }) => id)).toEqual(['b']);
    expect(
      foretoldOf(
        { outOf100: 97 },
        { outOf100: 98.456, sureOfPromisePct: 95.17 },
        { sureMmPerS: null, evenMmPerS: 13, hardlyMmPerS: 14 },
      ),
    ).toEqual({
      outOf100: 98.46,
      promisedOutOf100: 97,
      surePct: 95.2,
      evenMmPerS: 13,
      hardlyMmPerS: 14,
    });
  });
});
