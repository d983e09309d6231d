import { describe, expect, it } from 'vitest';
import { sampleKerfTest } from '../../../../test/samples/studies.ts';
import {
  combsIn,
  emptyKerfDraft,
  kerfTestFrom,
  readKerfDraft,
  slotsIn,
  stockOfBatch,
  withTime,
} from './kerfDraft.ts';

const box = { xMm: 0, yMm: 0, widthMm: 60, heightMm: 25 };
const placed = (label: string) => ({
  ...{ label, direction: 'across' as const, strips: 10, nominalMm: 60 },
  ...{ block: box, bar: box },
});
const { setting, stock } = sampleKerfTest('k');

describe('what was typed of combs and slots', () => {
  it('counts a comb once its strips are measured, and its bar where it is', () => {
    const draft = {
      ...emptyKerfDraft,
      times: 2,
      strips: { '1X': [58, null], '2X': [null] },
      bars: { '1X': [59.8, 59.81], '2X': [59.8] },
    };
    expect(combsIn(draft, [placed('1X'), placed('2X')])).toEqual([
      {
        ...{ place: '1X', direction: 'across', strips: 10, nominalMm: 60 },
        ...{ measuredMm: [58], barMm: [59.8, 59.81] },
      },
    ]);
  });

  it('puts each reading in its own place', () => {
    expect(withTime(undefined, 1, 5)).toEqual([null, 5]);
    expect(withTime([1, 2], 0, undefined)).toEqual([null, 2]);
  });

  it('is a test once a comb or two slots are there, of the batch that was typed', () => {
    const read = { combs: [], slots: slotsIn(emptyKerfDraft, [2.8]), tongueMm: 3, batch: 'spring' };
    expect(kerfTestFrom({ setting, stock }, read)).toBeUndefined();
    const slots = slotsIn(
      { ...emptyKerfDraft, fits: { '2.80': 'press', '2.90': 'slip' } },
      [2.8, 2.9],
    );
    expect(kerfTestFrom({ setting, stock }, { ...read, slots })).toMatchObject({
      ...{ stock: { batch: 'spring' }, tongueMm: 3, combs: [] },
    });
    expect(stockOfBatch({ ...stock, sheet: 'no. 4' }, 'autumn')).toEqual({
      ...{ material: stock.material, nominalThicknessMm: 3, batch: 'autumn' },
    });
  });

  it('is read back as it was written; what is damaged is passed over', () => {
    const full = { ...emptyKerfDraft, places: 2 as const, strips: { '1X': [58, null] } };
    expect(readKerfDraft(JSON.parse(JSON.stringify(full)))).toEqual(full);
    expect(readKerfDraft({ pieceMm: 3 })).toBeUndefined();
  });
});
